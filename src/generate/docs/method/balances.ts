import { html } from '../html.ts';
import { cited, functionLink } from '../words.ts';
import { recordNamed, type Section, step, taken } from './figures.ts';

export const balanceSections: readonly Section[] = [
  {
    id: 'scope',
    title: 'What is asked, and what is in the sum',
    paragraphs: [
      html`The plan replaces bought bedding in cubicles by fibre pressed from the herd’s own slurry, dried or not. It asks four things: how much bedding the beds need, whether slurry, press, heat and air can make it, what it saves against what it costs, and whether the beds stay dry and fresh enough. ${functionLink('BUDGET.HERD')} asks all four at once; every part of it is a function that can be checked by itself.`,
      html`The sum begins with the slurry as it reaches the press and ends with bedding in the cubicle. The liquid left over, its store and its spreading are outside it: a farm presses its slurry whether this sum is good or bad at them.`,
      html`Mass is fresh mass unless dry matter is named. One cubic metre of slurry is taken as one tonne (common practice, no source). Dry matter is a share of fresh mass, so 0.35 is 35 %.`,
      html`Nothing typed in is ever filled in silently: where a figure is left out, the default stands here and in the working with its source and how far it was checked.`,
    ],
  },
  {
    id: 'mass',
    title: 'The mass balance',
    paragraphs: [
      html`Dry matter that goes in comes out: drying takes water and nothing else. So ${step('DRYING.WATER', 'water')}, and ${step('DRYING.YIELD', 'dried')}. This is a balance and needs no source; it is checked against ${cited('irri-paddy')} and ${cited('coulson-richardson-16-5')}.`,
      html`The press splits the slurry’s dry matter. What it catches goes into the cake: ${step('FIBRE.CAKE', 'dry_matter_t', 'caught_t', 'cake_t')}. The liquid takes the rest.`,
      html`The share caught decides how much fibre there is, and it is the weakest figure of the balance. The budget begins with ${taken('capture')}. Published shares differ widely with press, screen and feed (${cited('moller-2000')}, ${cited('hjorth-2010')}). Three samples, of slurry, cake and liquid, give the farm’s own: ${step('FIBRE.CAPTURE', ...Object.keys(recordNamed('FIBRE.CAPTURE').working))}. Take them before money is spent.`,
      html`Beds are laid by volume. Litres laid become kilograms by bulk density, and density changes as the fibre dries: ${step('MATERIAL.DRIEDDENSITY', 'mass_kept', 'volume_kept', 'dried_density_kg_m3')}. No published curve was found; this is what must hold if the heap shrinks by the stated share. A weighed bucket settles it.`,
      html`The beds’ need for a year is ${step('DEMAND.HERD', 'laid_t_year', 't_year')}. What is lost in store, handling and dosing is an input; the budget begins with ${taken('fibre_lost')}. Measure it by what is put in and what is scraped off.`,
      html`Three stages can each fall short: the slurry’s fibre, the press’s hours, the dryer’s air. Each is turned into tonnes of dried fibre a day and held against the need; the smallest sets the cover (${functionLink('PLANT.CAPACITY')}). A day’s need is the year’s over the housed days, with no allowance for breakdowns: a plan with less than a tenth to spare is warned of.`,
      html`<b>Against.</b> Fibre that heats itself in a heap or a slow drum burns dry matter away, and the balance then promises too much bedding and too little warmth. How much is burnt in hours or a day is not known here; an engineer can weigh it: dry matter in and out of the drum over a day.`,
      html`<b>Against.</b> Cows on drier or fluffier bedding may be given more litres, or fewer. The plan takes the litres that are typed in and cannot tell whether a bed so made looks full.`,
    ],
  },
];
