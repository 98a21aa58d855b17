import { parseXml, XmlDocumentType, XmlElement, XmlError } from '@rgrove/parse-xml';
import type { XmlDocument } from '@rgrove/parse-xml';
import { GROUND_CAPS } from '@leeway/contract';
import type { GeoPoint } from '@leeway/engine';
import type { FaultBook } from './faultBook.ts';
import type { MapFile } from './feature.ts';
import { featuresOfOsm } from './osm.ts';
import type { OsmNode, OsmRelation, OsmWay } from './osmData.ts';
import { positions } from './positions.ts';

/**
 * Reads OSM XML 0.6. Elements may come in any order and refer to what is not in the file. A document type, and with it any entity of
 * its own, is refused; so is anything that is not well-formed.
 */
export function readOsmXml(text: string, book: FaultBook): MapFile | undefined {
  const root = parseRoot(text, book);
  if (!root) return undefined;
  const read = positions(book);
  const nodes: OsmNode[] = [];
  const places = new Map<string, GeoPoint>();
  const rawWays: XmlElement[] = [];
  const relations: OsmRelation[] = [];
  for (const element of root.children) {
    if (!(element instanceof XmlElement) || !['node', 'way', 'relation'].includes(element.name)) continue;
    if (read.stopped) return undefined;
    const { id = '', visible, action } = element.attributes;
    const at = `${element.name}/${id}`;
    if (id === '') {
      book.add({
        code: 'bad-element',
        level: 'left out',
        found: `a ${element.name} without an id`,
        expected: 'an id',
        done: 'it is left out',
      });
    } else if (visible === 'false' || action === 'delete') {
      book.add(
        {
          code: 'deleted',
          level: 'note',
          found: 'an element marked as deleted',
          expected: 'present elements',
          done: 'it is left out',
        },
        at,
      );
    } else if (element.name === 'node') {
      const place = read.read(element.attributes['lon'], element.attributes['lat'], at);
      if (!place) continue;
      places.set(id, place);
      nodes.push({ id, at: place, tags: tagsOf(element) });
    } else if (element.name === 'way') rawWays.push(element);
    else relations.push({ id, tags: tagsOf(element), members: membersOf(element) });
  }
  if (rawWays.length + relations.length > GROUND_CAPS.features)
    book.add({
      code: 'too-many-features',
      level: 'refused',
      found: `${rawWays.length + relations.length} ways and relations`,
      expected: `at most ${GROUND_CAPS.features}`,
    });
  const ways = new Map<string, OsmWay>();
  for (const way of rawWays) {
    const id = way.attributes['id'] ?? '';
    ways.set(id, { id, tags: tagsOf(way), points: childrenOf(way, 'nd').map((nd) => places.get(nd['ref'] ?? '')) });
  }
  return read.stopped ? undefined : featuresOfOsm({ nodes, ways, relations }, book);
}

function parseRoot(text: string, book: FaultBook): XmlElement | undefined {
  const refuse = (code: string, found: string, expected: string, at?: string): undefined =>
    book.add({ code, level: 'refused', found, expected }, at);
  let document: XmlDocument;
  try {
    document = parseXml(text.replaceAll(/\r\n?/g, '\n'), { preserveDocumentType: true });
  } catch (error) {
    if (error instanceof XmlError) {
      const { line, column } = error;
      const found = error.message.split('\n')[0] ?? 'an error';
      return book.take([
        { code: 'bad-xml', level: 'refused', file: book.file, line, column, found, expected: 'well-formed XML' },
      ]);
    }
    if (error instanceof RangeError)
      return refuse('too-deep', 'elements nested too deep to read', 'OSM XML, three deep');
    throw error;
  }
  if (document.children.some((child) => child instanceof XmlDocumentType))
    return refuse('doctype', 'a document type declaration', 'plain OSM XML, without document type or entities');
  const root = document.root;
  if (root?.name !== 'osm') return refuse('not-a-map', `the root element ${root?.name ?? 'missing'}`, '<osm>');
  return root;
}

const childrenOf = (element: XmlElement, name: string): readonly XmlElement['attributes'][] =>
  element.children.flatMap((child) => (child instanceof XmlElement && child.name === name ? [child.attributes] : []));

const tagsOf = (element: XmlElement): ReadonlyMap<string, string> =>
  new Map(
    childrenOf(element, 'tag').flatMap(({ k, v }) => (k === undefined || v === undefined ? [] : [[k, v] as const])),
  );

const membersOf = (element: XmlElement): OsmRelation['members'] =>
  childrenOf(element, 'member').map(({ type = '', ref = '', role = '' }) => ({ type, ref, role }));
