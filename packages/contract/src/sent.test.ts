import { frameAt, type HoleGround } from '@leeway/engine';
import { expect, test } from 'vitest';
import { receivedHole, sentHole } from './sent.ts';

const ground: HoleGround = {
  hole: '3',
  par: 3,
  parGuessed: false,
  frame: frameAt({ lat: 50, lon: -30 }),
  ball: { eastM: 0, northM: 0 },
  flag: { eastM: 12, northM: 140 },
  flagFrom: 'given',
  line: [
    { eastM: 0, northM: 0 },
    { eastM: 12, northM: 140 },
  ],
  areas: [],
  cautions: [],
  heights: {
    westM: -50,
    southM: -50,
    stepM: 100,
    columns: 2,
    rows: 2,
    heightM: Float32Array.of(1.1, 2.2, 3.3, 4.4),
    from: 'spot heights',
  },
};

test('a hole that is sent as JSON comes back the very same, its heights too', () => {
  const back = receivedHole(JSON.parse(JSON.stringify(sentHole({ course: 'Tolvane Links' }, ground))));
  const bare = ({ frame, ...rest }: HoleGround) => ({ ...rest, origin: frame.origin });
  expect(bare(back)).toEqual(bare(ground));
  expect(back.heights?.heightM).toBeInstanceOf(Float32Array);
});

test('a hole on level ground is sent without heights', () => {
  const { heights: _heights, ...level } = ground;
  expect(sentHole({}, level).hole).not.toHaveProperty('heights');
  expect(receivedHole(sentHole({}, level))).not.toHaveProperty('heights');
});
