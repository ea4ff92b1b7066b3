import { it } from "vitest";
import { join } from "node:path";
import { readStudy } from "../../src/study/readStudy.js";
import { analyseSieve } from "../../src/grading/analyseSieve.js";
import { analyseHydrometer } from "../../src/grading/analyseHydrometer.js";
import { combineGrading } from "../../src/grading/combineGrading.js";
import { passingAtSize } from "../../src/grading/passingAtSize.js";
import { chooseModel } from "../../src/grading/chooseModel.js";
import { fitPoints } from "../../src/grading/fitPoints.js";
import { GRADING_MODELS } from "../../src/grading/models/gradingModels.js";
import { fitGrading } from "../../src/grading/fitGrading.js";
import { resampleGrading } from "../../src/grading/resampleGrading.js";
import { consistencyLimits } from "../../src/soil/consistencyLimits.js";
import { analyseCompaction } from "../../src/soil/analyseCompaction.js";
import { GUIDANCE_ENTRIES } from "../../src/guidance/guidanceEntries.js";
import { checkGuidance } from "../../src/guidance/checkGuidance.js";
import { EXAMPLES } from "../support/studyCopy.js";
it.each(["reading-room", "bus-shelter"])("%s", async (name) => {
  const { study } = await readStudy(join(EXAMPLES, name));
  for (const m of study!.materials) {
    const s = analyseSieve(m.sieve);
    console.log(m.sieve.file, JSON.stringify(s.sets), JSON.stringify(s.findings));
    let curve = { points: s.points };
    if (m.hydrometer) {
      const cfg = study!.config.materials.find((c) => c.sieve === m.sieve.file)!;
      const h = analyseHydrometer(m.hydrometer, { particleDensityKgM3: cfg.particleDensityKgM3, passingSeparatingPct: passingAtSize(curve, m.hydrometer.separatingSizeMm)! });
      const c = combineGrading({ sieve: s.points, sedimentation: h.points, file: m.hydrometer.file });
      console.log(JSON.stringify(c.overlap), JSON.stringify(c.repairs), JSON.stringify([...h.findings, ...c.findings]));
      curve = { points: [...c.curve.points] };
    }
    console.log(curve.points.map((p) => `${p.sizeMm.toPrecision(3)}:${p.passingPct.toFixed(1)}`).join(" "));
    const best = chooseModel(curve);
    for (const { fit, deltaAicc } of best.ranking)
      console.log(fit.model, fit.converged, "sd", fit.residualSdPct!.toFixed(2), "d", deltaAicc.toFixed(1), fit.parameters.map((p) => `${p.name}=${p.value.toPrecision(4)}±${p.standardError?.toPrecision(2)}`).join(" "), fit.warnings.join(" | "));
    console.log(best.ties, JSON.stringify(best.leftOut));
    for (const model of ["power", "lognormal", "weibull", "haverkamp-parlange", "fredlund", "bimodal-lognormal"] as const) {
      if (curve.points.length < 8) continue;
      for (let i = 0; i < 20; i++) fitGrading(curve, model);
      const t = performance.now();
      for (let i = 0; i < 50; i++) fitGrading(curve, model);
      const s0=fitPoints(GRADING_MODELS[model], curve.points, GRADING_MODELS[model].starts(curve)).solution; console.log(s0.iterations, s0.evaluations, s0.gradientNorm, model, ((performance.now() - t) / 50).toFixed(3), "ms");
    }
    const t = performance.now();
    if (best.ranking[0]) {
      const band = resampleGrading(best.ranking[0].fit, { sizesMm: [0.002, 0.063, 2], seed: 1 });
      console.log("band", JSON.stringify(band), (performance.now() - t).toFixed(1), "ms");
    }
    if (m.limits) {
      const l = consistencyLimits(m.limits);
      console.log(JSON.stringify(l));
      for (const e of GUIDANCE_ENTRIES) { const g = checkGuidance(curve, e, l); console.log(e.id, g.verdict, g.criteria.map((c) => c.text).join(" / ")); }
    }
  }
  if (study!.compaction) console.log(JSON.stringify({ ...analyseCompaction(study!.compaction, { particleDensityKgM3: 2660 }), curve: 0, zeroAirVoids: 0 }));
});
