/** One of a few, as keys side by side; the chosen one is inked. */
export function Keys<Value extends string>(props: {
  readonly name: string;
  readonly legend: string;
  readonly of: { readonly [V in Value]: string };
  readonly value: Value;
  readonly choose: (value: Value) => void;
}) {
  const values = Object.keys(props.of) as Value[];
  return (
    <fieldset class="choice">
      <legend>{props.legend}</legend>
      <div>
        {values.map((value) => (
          <label key={value}>
            <input
              type="radio"
              name={props.name}
              checked={value === props.value}
              onChange={() => props.choose(value)}
            />
            {props.of[value]}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
