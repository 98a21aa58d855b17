import { frameAt } from '@leeway/engine';

/** Metres east and north of the made-up course's origin, out in the ocean. */
export type Spot = readonly [eastM: number, northM: number];

/** A made-up feature. Areas give their rings without the repeated last corner. */
export interface Made {
  readonly id: string;
  readonly tags: { readonly [key: string]: string };
  readonly kind: 'point' | 'line' | 'area';
  readonly spots: readonly Spot[];
  /** Rings cut out of an area; in OSM data such an area is a relation, its outer ring in two open ways. */
  readonly inner?: readonly (readonly Spot[])[];
}

const ORIGIN = { lon: -30, lat: 47 };
const frame = frameAt(ORIGIN);

/** A place as maps keep it, to seven decimals. */
export const degrees = ([eastM, northM]: Spot): [lon: number, lat: number] => {
  const p = frame.toGeo({ eastM, northM });
  return [Number(p.lon.toFixed(7)), Number(p.lat.toFixed(7))];
};

const closed = <T>(ring: readonly T[]): T[] => [...ring, ...ring.slice(0, 1)];

export function toGeoJson(made: readonly Made[]): string {
  const geometry = (m: Made): object => {
    if (m.kind === 'point') return { type: 'Point', coordinates: m.spots.map(degrees)[0] };
    if (m.kind === 'line') return { type: 'LineString', coordinates: m.spots.map(degrees) };
    return { type: 'Polygon', coordinates: [m.spots, ...(m.inner ?? [])].map((ring) => closed(ring.map(degrees))) };
  };
  const features = made.map((m) => ({ type: 'Feature', id: m.id, properties: m.tags, geometry: geometry(m) }));
  return JSON.stringify({ type: 'FeatureCollection', features });
}

interface Element {
  readonly type: 'node' | 'way' | 'relation';
  readonly id: number;
  readonly tags: { readonly [key: string]: string };
  readonly at?: [lon: number, lat: number];
  readonly nodes?: readonly number[];
  readonly members?: readonly { readonly ref: number; readonly role: string }[];
}

/** The features as OSM elements: shared nodes, ways, and relations for areas with inner rings. */
function elementsOf(made: readonly Made[]): Element[] {
  const nodes = new Map<string, Element>();
  const nodeOf = (spot: Spot): number => {
    const at = degrees(spot);
    const known = nodes.get(at.join());
    if (known) return known.id;
    const id = 900_000 + nodes.size;
    nodes.set(at.join(), { type: 'node', id, tags: {}, at });
    return id;
  };
  const others: Element[] = [];
  let partId = 800_000;
  const part = (spots: readonly Spot[]): number => {
    others.push({ type: 'way', id: ++partId, tags: {}, nodes: spots.map(nodeOf) });
    return partId;
  };
  for (const m of made) {
    const id = Number(m.id.split('/')[1]);
    const { tags } = m;
    const [first] = m.spots;
    if (m.kind === 'point' && first) others.push({ type: 'node', id, tags, at: degrees(first) });
    else if (m.inner === undefined)
      others.push({ type: 'way', id, tags, nodes: (m.kind === 'area' ? closed(m.spots) : m.spots).map(nodeOf) });
    else {
      const half = m.spots.length >> 1;
      const outer = [m.spots.slice(0, half + 1), [...m.spots.slice(half), ...m.spots.slice(0, 1)].toReversed()].map(part);
      const inner = m.inner.map((ring) => part(closed(ring)));
      const members = [...outer.map((ref) => ({ ref, role: 'outer' })), ...inner.map((ref) => ({ ref, role: 'inner' }))];
      others.push({ type: 'relation', id, tags: { type: 'multipolygon', ...tags }, members });
    }
  }
  return [...nodes.values(), ...others];
}

/** The JSON of an OSM query: with the points in the ways, or with nodes to look up. */
export function toOsmJson(made: readonly Made[], withGeometry: boolean): string {
  const all = elementsOf(made);
  const places = new Map(all.map((e) => [e.id, e.at]));
  const point = (ref: number): object => ({ lat: places.get(ref)?.[1], lon: places.get(ref)?.[0] });
  const elements = all
    .filter((e) => !withGeometry || e.type !== 'node' || Object.keys(e.tags).length > 0)
    .map((e) => ({
      type: e.type,
      id: e.id,
      ...(e.at ? { lat: e.at[1], lon: e.at[0] } : {}),
      ...(e.nodes ? { nodes: e.nodes } : {}),
      ...(e.nodes && withGeometry ? { geometry: e.nodes.map(point) } : {}),
      ...(e.members ? { members: e.members.map((m) => ({ type: 'way', ...m })) } : {}),
      tags: e.tags,
    }));
  return JSON.stringify({ version: 0.6, elements });
}

export function toOsmXml(made: readonly Made[]): string {
  const quoted = (text: string): string =>
    text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
  const lines = elementsOf(made).map((e) => {
    const place = e.at ? ` lat="${e.at[1]}" lon="${e.at[0]}"` : '';
    const inside = [
      ...(e.nodes ?? []).map((ref) => `<nd ref="${ref}"/>`),
      ...(e.members ?? []).map((m) => `<member type="way" ref="${m.ref}" role="${m.role}"/>`),
      ...Object.entries(e.tags).map(([k, v]) => `<tag k="${quoted(k)}" v="${quoted(v)}"/>`),
    ].join('');
    return `<${e.type} id="${e.id}"${place}>${inside}</${e.type}>`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?>\n<osm version="0.6">\n${lines.join('\n')}\n</osm>\n`;
}
