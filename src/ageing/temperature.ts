/** Temperature, and what it does to the speed of ageing. Temperatures in °C. */

export const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
export const fahrenheit = (celsius: number): number => (celsius * 9) / 5 + 32;
export const kelvin = (celsius: number): number => celsius + 273.15;

/** Gas constant, kJ/(mol K). */
const R = 8.314462618e-3;

/**
 * Speed of a reaction beside its speed at another temperature, doubling every 10 °C. Good between about 0 and 40 °C.
 * Sources: hose trade articles (damage), Army battery manual (self-discharge doubles every 9 °C), gasoline at 20 and 30 °C.
 */
export const doublingRate = (temperature: number, reference: number): number => 2 ** ((temperature - reference) / 10);

/** The same by an activation energy in kJ/mol (Arrhenius). */
export const arrheniusRate = (temperature: number, reference: number, energy: number): number =>
  Math.exp((energy / R) * (1 / kelvin(reference) - 1 / kelvin(temperature)));

/**
 * The steady temperature that ages as fast as a run of others does, by the doubling rule: warm months weigh more, so it
 * lies above their mean.
 */
export const effectiveTemperature = (temperatures: readonly number[]): number =>
  25 + 10 * Math.log2(temperatures.reduce((sum, t) => sum + doublingRate(t, 25), 0) / temperatures.length);
