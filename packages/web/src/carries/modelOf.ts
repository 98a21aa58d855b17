import { type PlayerFile, playerModel } from '@leeway/engine';

const models = new WeakMap<PlayerFile, ReturnType<typeof playerModel>>();

/** A player's model, made once a file. */
export function modelOf(file: PlayerFile): ReturnType<typeof playerModel> {
  const made = models.get(file) ?? playerModel(file);
  models.set(file, made);
  return made;
}
