import type { Signal } from '@preact/signals';

/** What the page has just done, and the way to have it back. */
export interface Done {
  readonly words: string;
  readonly undo?: { readonly words: string; readonly act: () => void };
}

export const Says = ({ done }: { readonly done: Signal<Done | undefined> }) => (
  <div role="status" class={done.value === undefined ? 'unseen' : 'said'}>
    {done.value === undefined ? undefined : <span>{done.value.words}</span>}
    {done.value?.undo === undefined ? undefined : (
      <button type="button" class="link" onClick={done.value.undo.act}>
        {done.value.undo.words}
      </button>
    )}
  </div>
);

export const Wrong = ({ fault }: { readonly fault: Signal<string | undefined> }) =>
  fault.value === undefined ? null : (
    <div class="fault">
      <p role="alert">{fault.value}</p>
    </div>
  );
