/** The published pages that the shipped protocols take numbers from, as they are shown beside those numbers. */

/** A page read for the number it gives; where it reports another work, both are named. */
export const CITED = {
  flowIndex: "index used in trials: Perfusion 2011;26:45–50; Alston RP et al. Perfusion 2006;21:139",
  weightFlow: "teaching table of flow by weight (perfusion-course flash cards, paediatric overview)",
  weightBlood: "teaching table of blood volume by weight (perfusion-course flash cards, paediatric overview)",
  adultBlood: "65 mL/kg: Haemodilution Calculations, teaching notes at perfusion.com.au",
  redCells: "packed cells of 60 %: Haemodilution Calculations, teaching notes at perfusion.com.au",
  wholeBlood: "whole blood of 35 %: Haemodilution Calculations, teaching notes at perfusion.com.au",
  heparin: "upper end of 300–400 IU/kg: review of bypass anticoagulation, quoted at th4.ilovetranslation.com",
  actBypass:
    "STS/SCA/AmSECT guideline 2018: Shore-Lesserson L et al. Anesth Analg 2018;126:413–424, as summarised at Medscape 898528_5",
  everyHalfHour: "about every 30 min: Barlow C, Bedside notebook, cardiopulmonary bypass",
  protamine:
    "1 mg for 100 IU of the loading dose: J Extra Corpor Technol 2025;57:188–193; Barlow C, Bedside notebook",
  oneToFour: "ratio as published: Matte GS, del Nido PJ. J Extra Corpor Technol 2012;44:98–103",
  oneToFourInterval: "a single dose protects for about 90 min: PMC8828514",
  temperature: "Engelman R et al. J Extra Corpor Technol 2015;47:145–154 (PMC4631211)",
  warming:
    "Engelman R et al. J Extra Corpor Technol 2015;47:145–154, as listed at guidelinecentral.com/guideline/19523",
  oxygenPerGram: "1.34: RCEM Learning, Oxygen in human physiology; e-SAFE Anaesthesia 05_02",
  oxygenDissolved: "0.0225 mL/dL a kPa, which is 0.003 a mmHg: Postgraduate Medical Journal, worked table",
  meanPressure: "EACTS/EACTA/EBCP guideline 2019, as summarised at Medscape 920531_2",
  oxygenDelivery: "goal of 280 or more: Ranucci M et al. (GIFT) J Thorac Cardiovasc Surg 2018;156(5)",
  glucose: "4 to 10 mmol/L: Baker RA et al. J Extra Corpor Technol 2012;44:26–33",
  carbonDioxide: "35 to 45 mmHg: Baker RA et al. J Extra Corpor Technol 2012;44:26–33",
  beforeBypass: "categories of the AmSECT perfusion checklist (1990, revised 2004), in our own words",
  surgicalSafety: "phases of the WHO Surgical Safety Checklist (2008, revised 2009), in our own words",
  beforeWeaning: "items of Barlow C, Bedside notebook, before weaning, in our own words",
} as const;

/** The same page where a number found in adults is used for children. */
export const inAdults = (citation: string): string => `${citation} (found in adults)`;
