/** One of many: the platform's own list, in the look of the page. */
export const Pick = (props: {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly words: string }[];
  readonly choose: (value: string) => void;
}) => (
  <label class="pick">
    <span class="unseen">{props.label}</span>
    <select value={props.value} onChange={(e) => props.choose(e.currentTarget.value)}>
      {props.options.map(({ value, words }) => (
        <option key={value} value={value} selected={value === props.value}>
          {words}
        </option>
      ))}
    </select>
  </label>
);
