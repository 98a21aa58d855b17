import { useSignal } from '@preact/signals';
import type { CarriesState } from './state.ts';
import { CARRIES } from './words.ts';

/** Where files are dropped, or chosen by keyboard and finger. */
export function DropFiles({ state }: { readonly state: CarriesState }) {
  const over = useSignal(false);
  const take = (files: FileList | null | undefined): void => {
    over.value = false;
    if (files !== null && files !== undefined) state.offer([...files]);
  };
  return (
    <label
      class="drop"
      data-over={over.value}
      onDragOver={(e) => {
        e.preventDefault();
        over.value = true;
      }}
      onDragLeave={() => (over.value = false)}
      onDrop={(e) => {
        e.preventDefault();
        take(e.dataTransfer?.files);
      }}
    >
      <span>
        <b>{CARRIES.drop}</b> {CARRIES.pick}
      </span>
      <input
        type="file"
        multiple
        accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
        onChange={(e) => {
          take(e.currentTarget.files);
          e.currentTarget.value = '';
        }}
      />
      <small>{CARRIES.dropWhy}</small>
    </label>
  );
}
