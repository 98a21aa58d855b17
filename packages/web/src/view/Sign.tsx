/** The surveyor's triangle of a spot, its dot the place; the mark of the name is the same in ink. Middle at 0, 0. */
export const Triangle = ({
  line,
  scale = 1,
  broken = false,
}: {
  readonly line: 'buoy' | 'ink';
  readonly scale?: number;
  readonly broken?: boolean;
}) => (
  <g transform={scale === 1 ? undefined : `scale(${scale})`}>
    <path class="sign-halo" stroke-width="6.4" d={TRIANGLE} />
    <circle r="4.2" fill="var(--sheet)" />
    <path
      class={`sign-${line}`}
      stroke-width={broken ? 1.4 : 2.3}
      stroke-dasharray={broken ? '3.4 3' : undefined}
      d={TRIANGLE}
    />
    <circle r="2.6" fill="var(--buoy)" />
  </g>
);

/** Equilateral, point up, 25 wide, its middle at 0, 0. */
const TRIANGLE = 'M0-14.43 12.5 7.22H-12.5Z';

/** A ring on its place, a staff, a black pennant. Place at 0, 0. */
export const FlagSign = () => (
  <g>
    <path class="sign-halo" stroke-width="4.4" opacity="0.8" d="M0-3V-27M3 0A3 3 0 1 1-3 0 3 3 0 1 1 3 0" />
    <path fill="var(--ink)" d="M0-27 15-21.5 0-16Z" />
    <path class="sign-ink" stroke-width="1.5" d="M0-3V-27" />
    <circle r="3" fill="var(--sheet)" stroke="var(--ink)" stroke-width="1.4" />
  </g>
);

/** A ring and a dot. */
export const BallSign = () => (
  <g>
    <circle r="6.6" fill="var(--sheet)" />
    <circle class="sign-ink" r="6.2" stroke-width="1.6" />
    <circle r="2.2" fill="var(--ink)" />
  </g>
);

/** The triangle set in a line of words. */
export const SpotMark = ({ line = 'buoy' }: { readonly line?: 'buoy' | 'ink' }) => (
  <svg viewBox="-13 -15 26 23.5" aria-hidden="true">
    <path class={`sign-${line}`} stroke-width="2.3" d={TRIANGLE} />
    <circle r="2.6" fill="var(--buoy)" />
  </svg>
);
