/** What the browser tests take hold of on the Plan page. The page sets these; nothing else of its making matters to the tests. */
export const HOOKS = {
  /** On the page's `main`: whose answer is shown. `following` while the flag moves. */
  answer: { attribute: 'data-answer', values: ['prepared', 'following', 'settled'] },
  /** On the element whose text is the figure or the words named. */
  figure: {
    attribute: 'data-figure',
    /** Expected strokes of the shown shot; its club and swing; its spot in words; what an own spot costs more. */
    values: ['expected', 'option', 'spot', 'costsMore'],
  },
  /** On the chart of the shown shot: how many pictures it has shown, from 1; nothing before the first. */
  drawn: 'data-drawn',
  /** On the page's `main`, each `EAST,NORTH` in metres to a hundredth: the flag where the finger has it, and the flag that the shown choice is for. */
  flagAt: 'data-flag',
  answeredFor: 'data-answered-for',
  /** Role and accessible names of the handles, moved by pointer, arrow keys and touch. */
  handles: { role: 'slider', flag: 'Flag', spot: 'Spot' },
} as const;
