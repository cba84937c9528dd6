import benchmarks from '../data/hygiene-benchmarks.json';
import { NoAnswer } from './refusal.ts';

export type BeddingState = keyof typeof benchmarks;
export type Organism = keyof typeof benchmarks.used;

/** Whether the bedding has been lain on. */
export const beddingStates = Object.keys(benchmarks) as [BeddingState, ...BeddingState[]];

/** The groups of germs that a laboratory counts in bedding. */
export const organisms = Object.keys(benchmarks.used) as [Organism, ...Organism[]];

/**
 * A laboratory's count against the published benchmark.
 *
 * against = cfu_per_cm3 / benchmark
 *
 * Patel and others 2019, data/hygiene-benchmarks.json. Where the benchmark is 0 the answer is `absent` or `present`.
 * Benchmarks sort herds; they do not diagnose. Counts per gram are not counts per cm³: see countPerVolume.
 *
 * @param cfu_per_cm3 colony-forming units per cm³ of bedding
 */
export function countAgainstBenchmark(organism: Organism, state: BeddingState, cfu_per_cm3: number) {
  const held = benchmarks[state][organism];
  if ('missing' in held) throw new NoAnswer(held.missing);
  const benchmark = held.cfu_per_cm3;
  const presence = cfu_per_cm3 === 0 ? 'absent' : 'present';
  return { benchmark, against: benchmark === 0 ? presence : cfu_per_cm3 / benchmark };
}

/**
 * A count per gram as a count per cm³, to set it beside a benchmark.
 *
 * cfu_per_cm3 = cfu_per_g * density_kg_m3 / 1000
 *
 * Definition: 1,000 kg/m³ is 1 g/cm³. The density is that of the sample as it lay, fresh mass.
 */
export const countPerVolume = (cfu_per_g: number, density_kg_m3: number) => ({ cfu_per_cm3: (cfu_per_g * density_kg_m3) / 1000 });
