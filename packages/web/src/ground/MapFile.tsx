import { Drop } from '../parts/Drop.tsx';
import { units } from '../shell/remembered.ts';
import type { GroundState } from './state.ts';
import { countWords, faultLine, GROUND, holeLine } from './words.ts';

/** A map file: what is in it is shown before it is kept. */
export function MapFile({ state }: { readonly state: GroundState }) {
  const { file, preview, fileFaults } = state;
  const faults = [...fileFaults.value, ...(preview.value?.faults ?? [])];
  return (
    <>
      <Drop
        words={GROUND}
        accept=".geojson,.json,.osm,.xml"
        many={false}
        take={([first]) => {
          if (first !== undefined) void state.offer(first);
        }}
      />
      {file.value === undefined ? undefined : (
        <section class="offered" aria-label={file.value.name}>
          <h2>{preview.value?.course ?? file.value.name}</h2>
          <p class="small" role="status">
            {preview.value !== undefined
              ? `${countWords(preview.value.holes.length)}. ${preview.value.attribution ?? ''}`
              : faults.length > 0
                ? ''
                : GROUND.reading}
          </p>
          <ul class="noticed tall">
            {(preview.value?.holes ?? []).map((hole) => (
              <li key={hole.hole}>{holeLine(hole, units.value)}</li>
            ))}
          </ul>
          {faults.length === 0 ? undefined : <h3>{GROUND.faults}</h3>}
          <ul class="noticed tall">
            {faults.map((fault, i) => (
              <li key={i}>{faultLine(fault)}</li>
            ))}
          </ul>
          <div class="row">
            <button
              type="button"
              class="act first"
              disabled={preview.value === undefined}
              onClick={() => void state.keepFile()}
            >
              {GROUND.keepFile}
            </button>
            <button type="button" class="act" onClick={() => (file.value = undefined)}>
              {GROUND.leave}
            </button>
          </div>
        </section>
      )}
    </>
  );
}
