/** One of a few words; the chosen one stands upright over a bar. */
export function OneOf<Value extends string>(props: {
  readonly name: string;
  readonly legend: string;
  readonly of: { readonly [V in Value]: string };
  readonly value: Value;
  readonly choose: (value: Value) => void;
}) {
  const values = Object.keys(props.of) as Value[];
  return (
    <fieldset class="few">
      <legend class="unseen">{props.legend}</legend>
      {values.map((value) => (
        <label key={value}>
          <input type="radio" name={props.name} checked={value === props.value} onChange={() => props.choose(value)} />
          {props.of[value]}
        </label>
      ))}
    </fieldset>
  );
}
