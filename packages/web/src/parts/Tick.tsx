import { useId } from 'preact/hooks';

/** Yes or no, with what it means. */
export function Tick(props: {
  readonly label: string;
  readonly means: string;
  readonly on: boolean;
  readonly set: (on: boolean) => void;
}) {
  const id = useId();
  return (
    <div class="tick">
      <input
        type="checkbox"
        id={id}
        aria-describedby={`${id}-means`}
        checked={props.on}
        onChange={(e) => props.set(e.currentTarget.checked)}
      />
      <div>
        <label for={id}>{props.label}</label>
        <small id={`${id}-means`}>{props.means}</small>
      </div>
    </div>
  );
}
