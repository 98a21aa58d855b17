/** Exact by definition (international yard and pound agreement, 1959). */
export const YARD_M = 0.9144;
export const FOOT_M = 0.3048;
export const RAD_PER_DEG = Math.PI / 180;
