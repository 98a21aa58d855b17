import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';

/** A part of a page whose code comes when it is first shown. It stays away when the code cannot be had: the page works without it. */
export function late<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  const come = signal<{ readonly part: ComponentType<Props> } | undefined>(undefined);
  let asked = false;
  return (props) => {
    if (!asked) {
      asked = true;
      load().then(
        (part) => (come.value = { part }),
        () => (asked = false),
      );
    }
    const Part = come.value?.part;
    return Part === undefined ? null : <Part {...props} />;
  };
}
