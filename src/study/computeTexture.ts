import type { GradingCurve } from "../grading/gradingCurve.js";
import { usdaFromCurve } from "../soil/usdaFromCurve.js";
import { say } from "../words/say.js";
import type { DrawnCurves } from "./drawCurves.js";
import type { BlendStudy, MaterialResult } from "./studyResult.js";
import type { TextureStudy } from "./textureStudy.js";

/** The soils and the blend on the texture triangle; those whose curve does not reach 0.002 mm are left out. */
export function computeTexture(
  materials: readonly MaterialResult[],
  blend: BlendStudy,
  drawn: DrawnCurves,
): TextureStudy[] {
  const study = (
    name: string,
    curve: GradingCurve,
    curves: readonly GradingCurve[],
  ): TextureStudy[] => {
    const parts = usdaFromCurve(curve);
    if (!parts) return [];
    return [{ name, parts, resampled: curves.flatMap((each) => usdaFromCurve(each) ?? []) }];
  };
  return [
    ...materials.flatMap(({ name, role, curve }, index) =>
      role === "soil" ? study(name, curve, drawn.materials[index]) : [],
    ),
    ...study(say`Blend`, blend.curve, drawn.blend),
  ];
}
