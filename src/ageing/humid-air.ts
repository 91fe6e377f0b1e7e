/**
 * Water in air. Temperatures in °C, relative humidity in %. Magnus formula over water (6.112 hPa, 17.62, 243.12 °C),
 * meteorological practice; good between about −45 and 60 °C.
 */
import { kelvin } from './temperature.ts';

/** Vapor pressure of saturated air, hPa. */
export const saturation = (temperature: number): number =>
  6.112 * Math.exp((17.62 * temperature) / (243.12 + temperature));

/** Grams of water in a cubic meter of air. */
export const absoluteHumidity = (temperature: number, humidity: number): number =>
  (216.7 * saturation(temperature) * humidity) / 100 / kelvin(temperature);

/** Temperature at which that air starts to shed water, °C. Humidity above 0. */
export const dewPoint = (temperature: number, humidity: number): number => {
  const g = Math.log(humidity / 100) + (17.62 * temperature) / (243.12 + temperature);
  return (243.12 * g) / (17.62 - g);
};

/** Whether metal of a temperature turns wet in that air. */
export const condenses = (metal: number, air: number, humidity: number): boolean => metal < dewPoint(air, humidity);
