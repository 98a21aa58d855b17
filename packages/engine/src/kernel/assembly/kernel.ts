export { blur } from './blur';
export { sum } from './sum';
