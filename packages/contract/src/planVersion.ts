/** Version of the plan document; it rises when a field changes its meaning or goes. Apart from the schema, so that writers need not load it. */
export const PLAN_VERSION = 1;
