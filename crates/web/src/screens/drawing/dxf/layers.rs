//! The layers of a drawing with what each holds, and what each is chosen to be.

use drawings::{Choice, Drawing, Layer, Loop, Notation, Units};
use form_schema::FormData;
use localization::{Arg, Locale, UnitSystem};
use units::{Area, Length};

use super::messages::{short, spot, unit, width};
use crate::control;

/// Layers that are shown, areas of a layer and kinds of what was left out, at most.
const MAX_LAYERS: usize = 200;
const MAX_AREAS: usize = 6;
const MAX_KINDS: usize = 6;

/// What a layer is of the plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Role {
    Nothing,
    Outline,
    CutOuts,
    Zones,
    Joints,
}

impl Role {
    const ALL: [Self; 5] = [Self::Nothing, Self::Outline, Self::CutOuts, Self::Zones, Self::Joints];

    const fn name(self) -> &'static str {
        match self {
            Self::Nothing => "",
            Self::Outline => "outline",
            Self::CutOuts => "cut-outs",
            Self::Zones => "zones",
            Self::Joints => "joints",
        }
    }

    fn label(self, locale: Locale) -> String {
        match self {
            Self::Nothing => locale.message("dxf-role-nothing", &[]),
            Self::Outline => locale.message("dxf-role-outline", &[]),
            Self::CutOuts => locale.message("dxf-role-cut-outs", &[]),
            Self::Zones => locale.message("dxf-role-zones", &[]),
            Self::Joints => locale.message("dxf-role-joints", &[]),
        }
    }
}

/// One layer on the page.
#[derive(Debug, Clone)]
pub(super) struct LayerRow {
    pub(super) name: String,
    /// What it holds, a sentence each.
    pub(super) holds: Vec<String>,
    pub(super) roles: Vec<control::Choice>,
    pub(super) mistake: Option<String>,
}

/// What was chosen, in the order of the layers.
pub(super) struct Chosen {
    roles: Vec<Role>,
    pub(super) units: Option<Units>,
    /// Whether a person has chosen, or it is our guess.
    pub(super) by_person: bool,
}

const fn unit_name(units: Units) -> &'static str {
    match units {
        Units::NotTold => "",
        Units::Millimeters => "mm",
        Units::Centimeters => "cm",
        Units::Decimeters => "dm",
        Units::Meters => "m",
        Units::Inches => "in",
        Units::Feet => "ft",
        Units::Yards => "yd",
        Units::SurveyFeet => "survey-ft",
    }
}

/// The largest closed line of a layer.
fn largest(layer: &Layer) -> Option<&Loop> {
    layer.loops.iter().max_by(|a, b| a.area.total_cmp(&b.area))
}

impl Chosen {
    /// As typed; before anything is chosen, the layer with the largest closed line is the outline.
    pub(super) fn of(drawing: &Drawing, typed: &FormData) -> Self {
        let named = typed.answer("unit");
        let units = named.and_then(|name| Units::TOLD.into_iter().find(|unit| unit_name(*unit) == name));
        let texts = typed.get("role[]");
        let by_person = !texts.is_empty();
        let role = |text: &String| Role::ALL.into_iter().find(|role| role.name() == text).unwrap_or(Role::Nothing);
        let mut roles: Vec<Role> = texts.iter().map(role).collect();
        roles.resize(drawing.layers.len(), Role::Nothing);
        if !by_person {
            let areas = drawing.layers.values().take(MAX_LAYERS).map(|layer| largest(layer).map(|l| l.area));
            let most = areas.enumerate().filter_map(|(i, area)| Some((i, area?)));
            if let Some((outline, _)) = most.max_by(|a, b| a.1.total_cmp(&b.1)) {
                roles[outline] = Role::Outline;
            }
        }
        Self { roles, units, by_person }
    }

    fn layers(&self, drawing: &Drawing, role: Role) -> Vec<String> {
        let chosen = drawing.layers.keys().zip(&self.roles).filter(|(_, own)| **own == role);
        chosen.map(|(name, _)| name.clone()).collect()
    }

    /// The choice for the drawing; the key of what is wrong where not one layer is the outline.
    pub(super) fn choice(&self, drawing: &Drawing, locale: Locale) -> Result<Choice, String> {
        let mut outline = self.layers(drawing, Role::Outline);
        let key = if outline.is_empty() { "dxf-wrong-no-outline" } else { "dxf-wrong-two-outlines" };
        let (Some(outline_layer), true) = (outline.pop(), outline.is_empty()) else {
            return Err(locale.message(key, &[]));
        };
        Ok(Choice {
            outline_layer,
            cut_out_layers: self.layers(drawing, Role::CutOuts),
            zone_layers: self.layers(drawing, Role::Zones),
            joint_layers: self.layers(drawing, Role::Joints),
            units: self.units,
            notation: match locale.unit_system {
                UnitSystem::Imperial => Notation::FeetInches,
                UnitSystem::Metric => Notation::Meters,
            },
        })
    }

    /// One unit of the drawing, when it is known.
    pub(super) fn one(&self, drawing: &Drawing) -> Option<Length> {
        self.units.unwrap_or(drawing.units).one()
    }

    /// The units to choose from, each with what the outline would measure.
    pub(super) fn unit_choices(&self, drawing: &Drawing, locale: Locale) -> Vec<control::Choice> {
        let outline = drawing.layers.values().zip(&self.roles).find(|(_, role)| **role == Role::Outline);
        let around = outline.and_then(|(layer, _)| largest(layer));
        let size = around.map(|around| {
            let across = |axis: fn(&drawings::Spot) -> f64| {
                let all = || around.corners.iter().map(axis);
                all().fold(f64::NEG_INFINITY, f64::max) - all().fold(f64::INFINITY, f64::min)
            };
            (across(|at| at.x), across(|at| at.y))
        });
        let label = |units: Units| {
            let name = unit(units, locale);
            let Some(((x, y), one)) = size.zip(units.one()) else { return name };
            let args = [("x", locale.length(one * x)), ("y", locale.length(one * y)), ("unit", name)];
            locale.message("dxf-unit-size", &args.map(|(name, text)| (name, text.into())))
        };
        let told = drawing.units != Units::NotTold;
        let first = if told {
            locale.message("dxf-unit-told", &[("unit", label(drawing.units).into())])
        } else {
            locale.message("dxf-unit-choose", &[])
        };
        let mut all = vec![control::Choice { value: String::new(), label: first, chosen: self.units.is_none() }];
        let mut units = Units::TOLD.to_vec();
        // What the file hints at stands first; it is no answer.
        if let Some(metric) = drawing.metric_hint {
            units.sort_by_key(|unit| {
                let imperial = matches!(unit, Units::Inches | Units::Feet | Units::Yards | Units::SurveyFeet);
                imperial == metric
            });
        }
        all.extend(units.into_iter().map(|unit| control::Choice {
            value: unit_name(unit).to_owned(),
            label: label(unit),
            chosen: self.units == Some(unit),
        }));
        all
    }

    /// The layers with what they hold; and how many are not shown.
    pub(super) fn rows(
        &self,
        drawing: &Drawing,
        mistakes: &control::FieldErrors,
        locale: Locale,
    ) -> (Vec<LayerRow>, usize) {
        let one = self.one(drawing);
        let rows = drawing.layers.iter().zip(&self.roles).take(MAX_LAYERS).enumerate();
        let rows = rows.map(|(index, ((name, layer), role))| LayerRow {
            name: short(name),
            holds: holds(layer, one, locale),
            roles: Role::ALL
                .into_iter()
                .map(|each| control::Choice {
                    value: each.name().to_owned(),
                    label: each.label(locale),
                    chosen: each == *role,
                })
                .collect(),
            mistake: control::mistake_of(mistakes, &format!("role[{index}]")),
        });
        (rows.collect(), drawing.layers.len().saturating_sub(MAX_LAYERS))
    }
}

/// Where a layer stands on the page.
pub(super) fn row_of(drawing: &Drawing, layer: &str) -> Option<usize> {
    drawing.layers.keys().position(|name| name == layer)
}

fn area(size: f64, one: Option<Length>, locale: Locale) -> String {
    match one {
        Some(one) => locale.area(Area::square_meters(size * one.as_meters() * one.as_meters())),
        None => locale.message("dxf-own-square-units", &[("size", locale.number(size, 3).into())]),
    }
}

fn holds(layer: &Layer, one: Option<Length>, locale: Locale) -> Vec<String> {
    let count = |n: usize| ("count", Arg::Number(n as f64));
    let mut said = Vec::new();
    if !layer.loops.is_empty() {
        let mut sizes: Vec<f64> = layer.loops.iter().map(|around| around.area).collect();
        sizes.sort_by(|a, b| b.total_cmp(a));
        let mut areas: Vec<String> = sizes.iter().take(MAX_AREAS).map(|size| area(*size, one, locale)).collect();
        if sizes.len() > MAX_AREAS {
            areas.push("…".to_owned());
        }
        said.push(locale.message("dxf-holds-closed", &[count(layer.loops.len()), ("areas", areas.join(", ").into())]));
    }
    if !layer.open.is_empty() {
        let open = count(layer.open.len());
        said.push(match layer.gaps.first() {
            Some(gap) => {
                let ends = [("from", spot(gap.from, locale).into()), ("to", spot(gap.to, locale).into())];
                let gap = ("gap", width(gap.width(), one, locale).into());
                locale.message("dxf-holds-open", &ends.into_iter().chain([open, gap]).collect::<Vec<_>>())
            }
            None => locale.message("dxf-holds-open-far", &[open]),
        });
    }
    if let Some((at, _)) = layer.branches.first() {
        let places = count(layer.branches.len());
        said.push(locale.message("dxf-holds-branches", &[places, ("at", spot(*at, locale).into())]));
    }
    if !layer.labels.is_empty() {
        said.push(locale.message("dxf-holds-texts", &[count(layer.labels.len())]));
    }
    if !layer.ignored.is_empty() {
        let kinds = layer.ignored.iter().take(MAX_KINDS).map(|(kind, n)| format!("{n} × {}", short(kind)));
        let mut kinds: Vec<String> = kinds.collect();
        if layer.ignored.len() > MAX_KINDS {
            kinds.push("…".to_owned());
        }
        said.push(locale.message("dxf-holds-ignored", &[("kinds", kinds.join(", ").into())]));
    }
    said
}
