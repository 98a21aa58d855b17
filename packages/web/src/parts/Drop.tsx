import { useSignal } from '@preact/signals';

/** Where files are dropped, or chosen by keyboard and finger. */
export function Drop(props: {
  readonly words: { readonly drop: string; readonly pick: string; readonly dropWhy: string };
  readonly accept: string;
  readonly many: boolean;
  readonly take: (files: readonly File[]) => void;
}) {
  const over = useSignal(false);
  const take = (files: FileList | null | undefined): void => {
    over.value = false;
    if (files !== null && files !== undefined && files.length > 0) props.take([...files]);
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
        <b>{props.words.drop}</b> {props.words.pick}
      </span>
      <input
        type="file"
        multiple={props.many}
        accept={props.accept}
        onChange={(e) => {
          take(e.currentTarget.files);
          e.currentTarget.value = '';
        }}
      />
      <small>{props.words.dropWhy}</small>
    </label>
  );
}
