//! How the floor may look with the color of a panel: an illustration, and it says so.

use std::path::Path;

use diary_photographs::{Illustrated, Mottling, illustrated, panel_mottling};
use photo::decode;
use pictures::{FloorPart, PlanLook, floor_svg, png};
use science::chance::Seed;
use serde_json::json;
use slab_answers::panels::{Panel, panels, stands_for};
use slab_diary::body::PanelState;
use slab_diary::fold;

use crate::cli::{StateArg, Which};
use crate::failure::{Answer, Failure};
use crate::json::rounded;
use crate::out::answer;
use crate::session::Session;

/// What is asked for.
pub(crate) struct Asked<'a> {
    pub(crate) panel: &'a str,
    pub(crate) state: Option<StateArg>,
    pub(crate) svg: Option<&'a Path>,
    pub(crate) png: Option<&'a Path>,
    pub(crate) seed: u64,
}

/// Units of the drawing across.
const WIDTH: f64 = 900.0;

pub(crate) fn run(session: &Session, which: &Which, asked: &Asked<'_>) -> Result<Answer, Failure> {
    if asked.svg.is_none() && asked.png.is_none() {
        return Err(Failure::Use("nothing to write; accepted: --svg FILE, --png FILE, or both".to_owned()));
    }
    let slab_asked = session.ask(which)?;
    let slab = fold(&slab_asked.diary, slab_asked.knowledge);
    let locale = session.locale;
    let known = panels(&slab);
    let panel = known.iter().find(|panel| panel.name.eq_ignore_ascii_case(asked.panel.trim())).ok_or_else(|| {
        let names: Vec<&str> = known.iter().map(|panel| panel.name).collect();
        Failure::Use(format!("--panel \"{}\": accepted: a panel of this slab ({})", asked.panel, names.join(", ")))
    })?;
    let plan = slab
        .plan()
        .filter(|plan| plan.is_drawn())
        .ok_or_else(|| Failure::Data("the slab has no drawn plan; draw one first (docs/diary.md, plan)".to_owned()))?;
    let (state, state_key, mottling) = mottling(session, panel, asked.state)?;
    let Illustrated { colors, pixel } = illustrated(&mottling.color, plan, Seed(asked.seed)).map_err(Failure::data)?;
    let zones = stands_for(&slab, panel);
    let state_said = locale.message(state_key, &[]);
    let mut note = locale.message("preview-note", &[("panel", panel.name.into()), ("state", state_said.into())]);
    let shown =
        locale.message("preview-shown", &[("share", locale.percent((100.0 * colors.shown.as_share()).round()).into())]);
    note = format!("{note} {shown}");
    if mottling.scale_from == diary_photographs::ScaleFrom::Assumed {
        note = format!("{note} {}", locale.message("preview-scale-assumed", &[]));
    }
    let title = format!("{}, {}", slab_asked.record.name, panel.name);
    let look = PlanLook::new("floor", &title, locale).wide(WIDTH);
    let part = FloorPart { colors: &colors, pixel, zones: &zones };
    let svg =
        floor_svg(plan, &[part], &note, &look).ok_or_else(|| Failure::Data("the plan is not drawn".to_owned()))?;
    let mut written = Vec::new();
    if let Some(file) = asked.svg {
        super::papers::write(file, svg.as_bytes())?;
        written.push(file.display().to_string());
    }
    if let Some(file) = asked.png {
        super::papers::write(file, &png(&svg, 2.0).map_err(Failure::data)?)?;
        written.push(file.display().to_string());
    }
    if session.json {
        let answer = json!({
            "panel": panel.name,
            "state": state,
            "zones": zones,
            "seed": asked.seed,
            "pixel_mm": rounded(pixel.as_meters() * 1000.0, 3),
            "shown_share": rounded(colors.shown.as_share(), 4),
            "clipped_share": rounded(colors.clipped.as_share(), 4),
            "scale_from": mottling.scale_from.code(),
            "illustration_only": true,
            "written": written,
        });
        answer!("{answer:#}");
        return Ok(Answer::Yes);
    }
    answer!("{note}");
    for file in &written {
        answer!("{}", locale.message("paper-written", &[("file", file.as_str().into())]));
    }
    Ok(Answer::Yes)
}

/// The colors of a panel's photograph, in the wished state or the first there is: sealed, stained, bare.
fn mottling(
    session: &Session,
    panel: &Panel<'_>,
    state: Option<StateArg>,
) -> Result<(&'static str, &'static str, Mottling), Failure> {
    let wanted = match state {
        Some(state) => vec![PanelState::from(state)],
        None => vec![PanelState::Sealed, PanelState::Stained, PanelState::Bare],
    };
    for state in wanted {
        let Some(look) = panel.look(state).filter(|look| !look.outdated) else { continue };
        let Some(hash) = look.seen.entry.photographs.first() else { continue };
        let bytes = session.store.photograph(hash).map_err(Failure::data)?;
        let picture = decode(&bytes).map_err(Failure::data)?;
        let side = panel.made.and_then(|made| made.body.side.as_ref()).map(units::AsWritten::value);
        let mottling = panel_mottling(look.seen.body, side, &picture).map_err(Failure::data)?;
        let (word, key) = match state {
            PanelState::Bare => ("bare", "preview-state-bare"),
            PanelState::Stained => ("stained", "preview-state-stained"),
            PanelState::Sealed => ("sealed", "preview-state-sealed"),
        };
        return Ok((word, key, mottling));
    }
    Err(Failure::Data(format!(
        "panel {}: no photograph of it as it is now; accepted: an entry panel_photographed with a photograph and a gray card in it",
        panel.name
    )))
}
