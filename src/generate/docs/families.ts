/** The functions' families, in the order of a job: what each is about, on one page each. */
export const families = {
  DEMAND: { title: 'How much bedding the beds use', about: 'Beds are laid by volume and bought by mass: these go from one to the other.' },
  MATERIAL: {
    title: 'Figures for bedding materials',
    about: 'Densities and dry matters to begin with. A weighed bucket and a tested sample of your own are better.',
  },
  FIBRE: {
    title: 'Separating fibre from slurry',
    about: 'Mass balances of the press, and how long it must run. One cubic metre of slurry is taken as one tonne.',
  },
  DRYING: {
    title: 'Water, air and heat of drying',
    about: 'What must be evaporated, what warm air can carry off, and whether a stated output is possible on that air.',
  },
  PLANT: {
    title: 'What the kit can do',
    about: 'From settings and readings on the walk to flows, speeds, power and what limits the whole.',
  },
  COST: { title: 'What bedding costs', about: 'Costs of a year, bought in or made at home, in whatever currency the sheet uses.' },
  INVEST: {
    title: 'Whether the kit pays',
    about: 'Savings come at the end of each year and grow from the second. The saving is before the cost of owning the kit.',
  },
  HYGIENE: {
    title: 'A planning score for clean beds',
    about:
      'A planning aid and no diagnosis. Its weights are this project’s judgement, not fitted to data: read a score with its span, and talk to your vet.',
  },
  UDDER: {
    title: 'Mastitis in cases and money',
    about: 'From records to rates and costs. No function foretells mastitis from bedding: nothing published supports that.',
  },
  WELFARE: {
    title: 'Lying, hocks and stocking',
    about: 'What published trials found, those that contradict each other too. No milk is claimed for longer lying.',
  },
  BUDGET: { title: 'The whole job in one call', about: 'The plan for a herd, for many, for a range of values, and what would make it so.' },
  REFERENCE: {
    title: 'Working, sources, conditions and cautions',
    about: 'How any number came about, where figures come from, and whom to ask.',
  },
} as const;

export type Family = keyof typeof families;

/** The family that a function's name says it is of; those without one are for reference. */
export function familyOf(name: string): Family {
  const family = name.includes('.') ? (name.split('.')[0] as string) : 'REFERENCE';
  if (!(family in families)) throw new Error(`${name}: src/generate/docs/families.ts has no page for it`);
  return family as Family;
}
