//! What the lines come to: their length, the sections between them, the tiles they make, and what
//! speaks against the joints.

use localization::{Arg, Locale};
use pictures::{PlanLayers, PlanLook, plan_svg};
use slab_plan::layout::{
    Cuts, JointLimits, LayoutError, Sections, check_joints, joint_lines, pattern_lines, score_lines, tiles,
};
use slab_plan::{Plan, PlanSpec, ScoreSpec};
use trade_facts::Trade;
use units::{Area, Fraction, Notation as _};

use super::super::read::Wrong;
use super::messages::{FindingSaid, finding, layout_error};
use super::read::{Lines, SLIVER, Tools};

/// Findings that are told, at most.
const MAX_FINDINGS: usize = 20;

/// The lines as typed.
#[derive(Debug, Clone, Default)]
pub(super) struct Look {
    pub(super) drawing: Option<String>,
    pub(super) metric: bool,
    /// What keeps them from being written.
    pub(super) wrong: Vec<String>,
    /// Joints, sections, and what could not be reckoned.
    pub(super) joints: Vec<String>,
    /// What the rule allows; nothing while the thickness is not known.
    pub(super) rule: Option<String>,
    pub(super) findings: Vec<FindingSaid>,
    pub(super) more_findings: Option<String>,
    pub(super) patterns: Vec<PatternRow>,
    pub(super) all_patterns: Option<String>,
}

/// One pattern and what it comes to.
#[derive(Debug, Clone)]
pub(super) struct PatternRow {
    pub(super) name: String,
    pub(super) length: String,
    pub(super) tiles: String,
}

/// Proves the lines on the plan that stands.
pub(super) fn prove(lines: &Lines, standing: &PlanSpec, locale: Locale) -> Result<(PlanSpec, Plan), Wrong> {
    let spec = lines.on(standing);
    match Plan::resolve(&spec) {
        Ok(plan) => Ok((spec, plan)),
        Err(error) => Err(vec![(lines.field(error.path()), locale.plan_error(&error))]),
    }
}

/// The look at lines that hold, or at what is wrong with them; the drawing is then the plan that stands.
pub(super) fn look(proved: Result<&Plan, &Wrong>, standing: &Plan, tools: &Tools, locale: Locale) -> Look {
    let title = locale.message("lines-title", &[]);
    let plan = proved.unwrap_or(standing);
    let drawing = plan_svg(plan, &PlanLayers::default(), &PlanLook::new("lines", &title, locale).keyed()).svg;
    let metric = locale.unit_system == localization::UnitSystem::Metric;
    let mut look = Look { drawing, metric, ..Look::default() };
    match proved {
        Ok(plan) => {
            look.of_joints(plan, tools, locale).unwrap_or_else(|error| look.joints.push(layout_error(&error, locale)));
            look.of_rule(plan, tools, locale).unwrap_or_else(|error| look.joints.push(layout_error(&error, locale)));
            look.of_patterns(plan, tools.sliver, locale);
        }
        Err(wrong) => look.wrong = wrong.iter().map(|(_, said)| said.clone()).collect(),
    }
    look
}

/// How many there are, the smallest and the largest.
fn sizes(sections: &Sections) -> (usize, Area, Area) {
    let areas = || sections.sections().iter().map(|section| section.area);
    let (mut small, mut large) = (Area::square_meters(f64::INFINITY), Area::ZERO);
    areas().for_each(|area| (small, large) = (small.min(area), large.max(area)));
    (sections.sections().len(), small, large)
}

fn sizes_said(key: &'static str, sections: &Sections, more: Option<(&'static str, String)>, locale: Locale) -> String {
    let (count, small, large) = sizes(sections);
    let mut args: Vec<(&str, Arg<'_>)> = vec![("count", Arg::Number(count as f64))];
    args.extend([("small", locale.area(small).into()), ("large", locale.area(large).into())]);
    args.extend(more.map(|(name, text)| (name, text.into())));
    locale.message(key, &args)
}

impl Look {
    fn of_joints(&mut self, plan: &Plan, tools: &Tools, locale: Locale) -> Result<(), LayoutError> {
        let lineal = joint_lines(plan)?;
        let count = Arg::Number(plan.joints().len() as f64);
        let args = [("count", count), ("length", locale.length(lineal.length).into())];
        self.joints.push(locale.message("lines-joints-length", &args));
        let sections = Sections::of(plan, Cuts { joints: true, score_lines: false })?;
        self.joints.push(sizes_said("lines-sections", &sections, None, locale));
        if let Some(wish) = tools.wish {
            let merged = sections.merged(wish)?;
            let wished = Some(("wish", locale.area(wish)));
            self.joints.push(sizes_said("lines-merged", &merged, wished, locale));
            if sizes(&merged).2 > wish * (1.0 + 1e-9) {
                self.joints.push(locale.message("lines-merged-larger", &[]));
            }
        }
        Ok(())
    }

    fn of_rule(&mut self, plan: &Plan, tools: &Tools, locale: Locale) -> Result<(), LayoutError> {
        let Some(thickness) = tools.thickness else { return Ok(()) };
        let check = check_joints(plan, thickness, &[], &JointLimits::of(Trade::built_in())?)?;
        let (low, high) = check.spacing;
        let args = [("thickness", thickness), ("low", low), ("high", high)];
        self.rule =
            Some(locale.message("lines-rule", &args.map(|(name, length)| (name, locale.length(length).into()))));
        self.findings = check.findings.iter().take(MAX_FINDINGS).map(|each| finding(each, locale)).collect();
        let left = check.findings.len().saturating_sub(MAX_FINDINGS);
        self.more_findings =
            (left > 0).then(|| locale.message("lines-more-findings", &[("count", Arg::Number(left as f64))]));
        Ok(())
    }

    fn of_patterns(&mut self, plan: &Plan, sliver: Option<Fraction>, locale: Locale) {
        let Some(sliver) = sliver.or_else(|| Fraction::read(SLIVER).ok()) else { return };
        for (index, pattern) in plan.patterns().iter().enumerate() {
            let length = pattern_lines(plan, index).map(|lineal| locale.length(lineal.length));
            self.patterns.push(PatternRow {
                name: name(pattern.spec(), locale),
                length: length.unwrap_or_else(|error| layout_error(&error, locale)),
                tiles: tiles_said(plan, index, sliver, locale).unwrap_or_else(|error| layout_error(&error, locale)),
            });
        }
        if self.patterns.len() > 1
            && let Ok(all) = score_lines(plan)
        {
            let args = [("length", locale.length(all.length).into())];
            self.all_patterns = Some(locale.message("lines-all-patterns", &args));
        }
    }
}

/// A pattern's kind, and its zone.
fn name(spec: &ScoreSpec, locale: Locale) -> String {
    let kind = match spec {
        ScoreSpec::Grid(_) => locale.message("lines-grid", &[]),
        ScoreSpec::Diagonal(_) => locale.message("lines-diagonal", &[]),
        ScoreSpec::Border(_) => locale.message("lines-border", &[]),
        ScoreSpec::Lines(_) => locale.message("lines-free", &[]),
    };
    spec.zone().map_or_else(|| kind.clone(), |zone| format!("{kind}, {zone}"))
}

fn tiles_said(plan: &Plan, index: usize, sliver: Fraction, locale: Locale) -> Result<String, LayoutError> {
    let tiles = tiles(plan, index, sliver)?;
    let count = |n: usize| Arg::Number(n as f64);
    if tiles.full.is_none() {
        return Ok(locale.message("lines-parts", &[("count", count(tiles.tiles.len()))]));
    }
    let args = [("whole", count(tiles.whole)), ("cut", count(tiles.cut)), ("slivers", count(tiles.slivers))];
    Ok(locale.message("lines-tiles", &args))
}
