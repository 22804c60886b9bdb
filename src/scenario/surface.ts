/**
 * Grip and rolling resistance of what the tyre runs on. Grip is the sliding value of the sources, the
 * careful side.
 *
 *   dry, wet asphalt                    grip: Noon, Engineering Analysis of Vehicular Accidents (1994)
 *   soft grass                          grip: between wet grass 0.20 (Noon) and wet earth 0.4 to 0.55 (Wong, from memory)
 *   packed gravel 0.55                  grip: Wong, Theory of Ground Vehicles (from memory)
 *   cobbles, loose sand                 grip: common practice, no source
 *   wet leaves                          grip: taken as packed snow, 0.15 to 0.25; common practice, no source
 *   asphalt 0.015, worn cobbles 0.03, loose sand 0.2    rolling: Engineering ToolBox, rolling resistance
 *   packed gravel 0.02                  rolling: Bosch Automotive Handbook (from memory)
 *   soft grass 0.08                     rolling: medium-hard soil, Carvill, Mechanical Engineer's Data Handbook (1993)
 */
import type { SURFACES } from '../quantity/scenario-file.js';

/** A surface by name. */
export type SurfaceName = (typeof SURFACES)[number];

/** Grip and rolling resistance, both forces over wheel load. */
export interface Surface {
  gripRatio: number;
  rollingResistanceRatio: number;
}

/** What each named surface offers. */
export const SURFACE_VALUES: Record<SurfaceName, Surface> = {
  'dry-asphalt': { gripRatio: 0.65, rollingResistanceRatio: 0.015 },
  'wet-asphalt': { gripRatio: 0.5, rollingResistanceRatio: 0.015 },
  'worn-cobbles': { gripRatio: 0.5, rollingResistanceRatio: 0.03 },
  'packed-gravel': { gripRatio: 0.55, rollingResistanceRatio: 0.02 },
  'wet-leaves': { gripRatio: 0.2, rollingResistanceRatio: 0.02 },
  'soft-grass': { gripRatio: 0.35, rollingResistanceRatio: 0.08 },
  'loose-sand': { gripRatio: 0.35, rollingResistanceRatio: 0.2 },
};
