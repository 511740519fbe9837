/** The drugs that the shipped protocols complete. No usual dose is shipped: that is for the unit and its doctors. */
import type { Drug } from "./drugs.ts";

const drug = (id: string, name: string, unit: string): Drug => ({ id, name, unit });
const checkedDrug = (id: string, name: string, unit: string): Drug => ({
  ...drug(id, name, unit),
  askSecondPerson: true,
});

/** Heparin and protamine are not among them: they have keys and units of their own. */
export const defaultDrugs: Drug[] = [
  drug("adrenaline", "adrenaline", "ug"),
  drug("amiodarone", "amiodarone", "mg"),
  checkedDrug("antithrombin", "antithrombin", "[IU]"),
  drug("calcium-chloride", "calcium chloride", "mmol"),
  drug("calcium-gluconate", "calcium gluconate", "mmol"),
  drug("cefazolin", "cefazolin", "g"),
  drug("cefuroxime", "cefuroxime", "g"),
  drug("dexamethasone", "dexamethasone", "mg"),
  drug("ephedrine", "ephedrine", "mg"),
  drug("esmolol", "esmolol", "mg"),
  drug("fentanyl", "fentanyl", "ug"),
  drug("furosemide", "furosemide", "mg"),
  drug("glucose", "glucose", "g"),
  drug("glyceryl-trinitrate", "glyceryl trinitrate", "ug"),
  checkedDrug("insulin", "insulin", "[IU]"),
  drug("lidocaine", "lidocaine", "mg"),
  drug("magnesium-sulfate", "magnesium sulfate", "mmol"),
  drug("mannitol", "mannitol", "g"),
  drug("metaraminol", "metaraminol", "mg"),
  drug("methylene-blue", "methylene blue", "mg"),
  drug("methylprednisolone", "methylprednisolone", "mg"),
  drug("midazolam", "midazolam", "mg"),
  drug("milrinone", "milrinone", "mg"),
  drug("noradrenaline", "noradrenaline", "ug"),
  drug("phentolamine", "phentolamine", "mg"),
  drug("phenylephrine", "phenylephrine", "ug"),
  checkedDrug("potassium-chloride", "potassium chloride", "mmol"),
  drug("propofol", "propofol", "mg"),
  drug("rocuronium", "rocuronium", "mg"),
  drug("sodium-bicarbonate", "sodium bicarbonate", "mmol"),
  drug("tranexamic-acid", "tranexamic acid", "g"),
  drug("vancomycin", "vancomycin", "g"),
  drug("vasopressin", "vasopressin", "[IU]"),
];
