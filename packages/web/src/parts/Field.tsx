import type { ComponentChildren } from 'preact';

interface Named {
  readonly label: string;
  readonly unit?: string;
  /** What is wrong with what stands in it. */
  readonly wrong?: string | undefined;
}

/** A line that is to be written on first is gone to when it appears. */
const meet = (input: HTMLElement | null): void => input?.focus();

/** A line to write on, with its name above, its unit at its end, and what is wrong below. */
export const Field = (
  props: Named & {
    readonly value: string;
    readonly set: (value: string) => void;
    readonly kind?: 'text' | 'number' | 'date';
    readonly most?: number;
    readonly need?: boolean;
    readonly focus?: boolean;
  },
) => (
  <Framed {...props}>
    {props.kind === 'date' ? (
      <input type="date" value={props.value} required onInput={(e) => props.set(e.currentTarget.value)} />
    ) : (
      <input
        type="text"
        inputMode={props.kind === 'number' ? 'decimal' : 'text'}
        value={props.value}
        maxLength={props.most ?? 80}
        required={props.need === true}
        aria-invalid={props.wrong !== undefined}
        autocomplete="off"
        ref={props.focus === true ? meet : null}
        onInput={(e) => props.set(e.currentTarget.value)}
      />
    )}
  </Framed>
);

export const Lines = (props: Named & { readonly value: string; readonly set: (value: string) => void }) => (
  <Framed {...props}>
    <textarea rows={3} maxLength={4000} value={props.value} onInput={(e) => props.set(e.currentTarget.value)} />
  </Framed>
);

export const Choose = (
  props: Named & {
    readonly value: string;
    readonly options: readonly (readonly [value: string, words: string])[];
    readonly focus?: boolean;
    readonly set: (value: string) => void;
  },
) => (
  <Framed {...props}>
    <select
      ref={props.focus === true ? meet : null}
      value={props.value}
      onChange={(e) => props.set(e.currentTarget.value)}
    >
      {props.options.map(([value, words]) => (
        <option key={value} value={value} selected={value === props.value}>
          {words}
        </option>
      ))}
    </select>
  </Framed>
);

const Framed = ({ label, unit, wrong, children }: Named & { readonly children: ComponentChildren }) => (
  <div class="field">
    <label>
      <span>{label}</span>
      <span class="line">
        {children}
        {unit === undefined ? undefined : <span class="unit">{unit}</span>}
      </span>
    </label>
    {wrong === undefined ? undefined : (
      <span class="wrong" role="alert">
        {wrong}
      </span>
    )}
  </div>
);
