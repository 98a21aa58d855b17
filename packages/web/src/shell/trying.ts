import type { Signal } from '@preact/signals';

/** Does things, and puts what goes wrong where the page tells of it, in place of what went wrong before. */
export const tryingWith =
  (fault: Signal<string | undefined>) =>
  async (act: () => Promise<void>): Promise<void> => {
    fault.value = undefined;
    try {
      await act();
    } catch (error) {
      fault.value = error instanceof Error ? error.message : String(error);
    }
  };
