/**
 * What barrels of home-built cylinders are made of, and what a wall of it may be asked to bear.
 *
 * Strength: the lower end of what plain tube is sold with; yield stress, for brittle cast iron tensile strength. Factor:
 * what is left off for flaws, notches, wear and pulsating pressure. All common practice, no source. A plastic has no
 * entry for strength: it is not a matter of wall thickness.
 */
export interface BarrelMaterial {
  readonly name: string;
  /** [Pa], and by how much it is divided; absent where the material is refused. */
  readonly strength?: { readonly value: number; readonly kind: string; readonly factor: number };
}

const ductile = (megapascal: number): BarrelMaterial['strength'] => ({
  value: megapascal * 1e6,
  kind: 'yield stress',
  factor: 4,
});

const strengths = {
  steel: ductile(235),
  brass: ductile(130),
  aluminium: ductile(130),
  'cast iron': { value: 150e6, kind: 'tensile strength', factor: 10 },
  PVC: undefined,
} satisfies Readonly<Record<string, BarrelMaterial['strength']>>;

type BarrelMaterialName = keyof typeof strengths;

export const barrelMaterialNames = Object.keys(strengths) as BarrelMaterialName[];

export function barrelMaterial(name: BarrelMaterialName): BarrelMaterial {
  const strength = strengths[name];
  return strength === undefined ? { name } : { name, strength };
}
