/** The systems of a car in the order its sheet lists them: what stops it first. */
export const SYSTEMS = {
  tires: 'Wheels and tires',
  brakes: 'Brakes',
  steering: 'Steering and suspension',
  fuel: 'Fuel',
  restraints: 'Restraints and safety kit',
  engine: 'Engine and lubrication',
  timing: 'Belts and timing',
  cooling: 'Cooling and heating',
  transmission: 'Clutch and transmission',
  driveline: 'Driveline',
  ignition: 'Ignition',
  electrical: 'Electrical',
  body: 'Body, seals and glass',
  roof: 'Convertible roof',
  climate: 'Air conditioning',
  storage: 'Storage consumables',
} as const;
export type System = keyof typeof SYSTEMS;
