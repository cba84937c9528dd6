import { NoAnswer, Refusal } from './refusal.ts';
import { said } from './spell.ts';

/**
 * Air that a fan moves at another speed.
 *
 * m3_h = rated_m3_h * hz / rated_hz
 *
 * First fan law: the same fan, ducts and air, only the speed changed.
 *
 * @param rated_m3_h air at the rated frequency, m³ per hour
 * @param rated_hz frequency at which that was measured, Hz
 * @param hz frequency set on the drive, Hz
 */
export function fanFlow(rated_m3_h: number, rated_hz: number, hz: number) {
  const speed_ratio = hz / rated_hz;
  return { speed_ratio, m3_h: rated_m3_h * speed_ratio };
}

/**
 * Frequency that gives a wanted flow: the first fan law the other way round.
 *
 * hz = rated_hz * m3_h / rated_m3_h
 *
 * Says what it would take, not whether fan, motor and drive may run so fast: ask the maker.
 *
 * @param rated_m3_h air at the rated frequency, m³ per hour
 * @param rated_hz frequency at which that was measured, Hz
 * @param m3_h air wanted, m³ per hour
 */
export function fanFrequency(rated_m3_h: number, rated_hz: number, m3_h: number) {
  return { hz: (rated_hz * m3_h) / rated_m3_h };
}

/**
 * Shaft power of a fan at another speed.
 *
 * kw = rated_kw * (hz / rated_hz) ** 3
 *
 * Third fan law, for a system without static head. At the shaft: motor and drive take more.
 *
 * @param rated_kw shaft power at the rated frequency, kW
 * @param rated_hz frequency at which that was measured, Hz
 * @param hz frequency set on the drive, Hz
 */
export function fanPower(rated_kw: number, rated_hz: number, hz: number) {
  const speed_ratio = hz / rated_hz;
  return { speed_ratio, kw: rated_kw * speed_ratio ** 3 };
}

/**
 * Time a drum takes to turn once at another frequency, its speed being in proportion to it.
 *
 * minutes_turn = minutes * known_hz / hz
 *
 * @param minutes minutes for one turn, as timed
 * @param known_hz frequency at which that was timed, Hz
 * @param hz frequency set on the drive, Hz
 */
export function drumTurn(minutes: number, known_hz: number, hz: number) {
  return { minutes_turn: (minutes * known_hz) / hz };
}

/**
 * Electricity that a motor takes.
 *
 * kwh = motor_kw * load_factor / efficiency * hours
 *
 * motor_kw is what the plate gives, at the shaft; the meter sees more by the motor's efficiency.
 * Where the shaft power itself is known, load_factor is 1.
 *
 * @param motor_kw rated output of the motor, kW
 * @param hours hours run
 * @param load_factor share of its rating that the motor delivers
 * @param efficiency shaft power over electric power, fraction
 */
export function electricityUsed(motor_kw: number, hours: number, load_factor: number, efficiency: number) {
  const electric_kw = (motor_kw * load_factor) / efficiency;
  return { electric_kw, kwh: electric_kw * hours };
}

/**
 * Heat that an engine leaves over once its own users are served.
 *
 * surplus_kw = electric_kw / electric_efficiency * heat_efficiency - own_use_kw
 *
 * Energy balance of an engine on its fuel; both efficiencies at the load at which electric_kw is read.
 *
 * @param electric_kw electricity it makes, kW
 * @param electric_efficiency electricity over fuel, fraction
 * @param heat_efficiency usable heat over fuel, fraction
 * @param own_use_kw heat that digester, house or dairy take, kW
 */
export function heatSurplus(electric_kw: number, electric_efficiency: number, heat_efficiency: number, own_use_kw: number) {
  if (electric_efficiency + heat_efficiency > 1)
    throw new Refusal(
      'heat_efficiency',
      said`${heat_efficiency} and electric_efficiency ${electric_efficiency} together are above 1`,
      'an engine gives no more than its fuel holds; enter shares that add up to less than 1',
    );
  const fuel_kw = electric_kw / electric_efficiency;
  const heat_kw = fuel_kw * heat_efficiency;
  const surplus_kw = heat_kw - own_use_kw;
  if (surplus_kw <= 0) throw new NoAnswer('no heat is left over: its own users take all that the engine gives');
  return { fuel_kw, heat_kw, surplus_kw };
}

/**
 * Mean speed of air up a round chimney or duct.
 *
 * speed_m_s = m3_h / 3600 / (PI * diameter_m ** 2 / 4)
 *
 * @param m3_h air as hot as it is there, m³ per hour
 * @param diameter_m inner diameter, m
 */
export function chimneySpeed(m3_h: number, diameter_m: number) {
  const area_m2 = (Math.PI * diameter_m ** 2) / 4;
  return { area_m2, speed_m_s: m3_h / 3600 / area_m2 };
}
