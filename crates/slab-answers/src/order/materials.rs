//! Neutralizer, water and waste, sealer, masking and protection.

use science::chemistry::{Base, Solution, neutralize};
use science::film::CoatingJob;
use units::{Area, Fraction, Length, Mass, Volume};

use super::packs::{liquid, powder};
use super::{Amount, Buyer, Item, Line, OrderNote, Spread};
use slab_diary::body::{Exposure, SealerChosen};
use trade_facts::{Grade, Pack};

impl Buyer<'_> {
    /// What is to be treated before the stain, kind by kind: for the hours and the price.
    pub(super) fn spot_lines(&self) -> Vec<Line> {
        let mut lines: Vec<Line> = Vec::new();
        for spot in crate::map::spots_of(self.slab, self.trade) {
            let area = spot.area();
            if !spot.is_open() || area == Area::ZERO {
                continue;
            }
            let at = match lines.iter().position(|line| line.which.as_deref() == Some(spot.what.as_str())) {
                Some(at) => at,
                None => {
                    let mut line =
                        self.line(Item::SpotWork, Amount::Area(Spread::exactly(Area::ZERO)), &[], Vec::new());
                    line.which = Some(spot.what.clone());
                    lines.push(line);
                    lines.len() - 1
                }
            };
            let line = &mut lines[at];
            if let Amount::Area(need) = line.need {
                line.need = Amount::Area(need.map(|known| known + area));
            }
            if spot.reach_assumed && !line.notes.contains(&OrderNote::ReachAssumed) {
                line.notes.push(OrderNote::ReachAssumed);
            }
            line.evidence.push(spot.entry);
        }
        lines
    }

    fn area(&self) -> Area {
        self.slab.area().unwrap_or(Area::ZERO)
    }

    /// The weakest grade to show for the material records a line used.
    fn grade(&self, materials: &[&str]) -> Grade {
        use trade_facts::Record;
        materials
            .iter()
            .filter_map(|id| self.trade.material(id))
            .map(|record| self.trade.grade_to_show(&record.citation()))
            .max()
            .unwrap_or(Grade::CommonPractice)
    }

    fn line(&self, item: Item, need: Amount, facts: &[&str], notes: Vec<OrderNote>) -> Line {
        Line {
            item,
            which: None,
            need,
            buy: Vec::new(),
            notes,
            grade: self.grade(facts),
            facts: facts.iter().map(|f| (*f).to_owned()).collect(),
            evidence: Vec::new(),
        }
    }

    /// Bicarbonate by practice, checked against what the acid bought could ask for at most.
    pub(super) fn neutralizer_lines(&self, stain: Spread<Volume>) -> Vec<Line> {
        let spread = self.solution();
        let waste = self.allowance("neutralizer-waste");
        let by_practice: Spread<Mass> = spread
            .zip(self.three("bicarbonate-solution"), |volume, strength| Mass::pounds(volume.as_us_gallons() * strength))
            .zip(waste, |mass, waste| mass * (1.0 + waste));
        let by_stoichiometry = self.acid_in(stain.high).and_then(|acid| neutralize(acid, Base::SodiumBicarbonate).ok());
        let at_most = by_stoichiometry.map(|n| n.base_mass);
        let governs = at_most.is_some_and(|mass| mass > by_practice.high);
        let need = match at_most {
            Some(mass) if governs => Spread { high: mass, ..by_practice },
            _ => by_practice,
        };
        let sizes: Vec<Mass> = self.trade.pack("bicarbonate").map(Pack::sizes).unwrap_or_default();
        let mut powder_line = self.line(
            Item::Bicarbonate,
            Amount::Mass(need),
            &["bicarbonate-solution", "neutralizer-spread"],
            vec![
                if governs { OrderNote::StoichiometryGoverns } else { OrderNote::PracticeCoversStoichiometry },
                OrderNote::AcidAssumed,
                OrderNote::Foams,
            ],
        );
        powder_line.buy = powder(need.high, &sizes);
        powder_line.grade = powder_line.grade.max(Grade::ExpertJudgment);
        vec![
            powder_line,
            self.line(Item::NeutralizerWater, Amount::Volume(spread), &["neutralizer-spread"], Vec::new()),
        ]
    }

    /// Acid in a volume of stain as bought, at the assumed strength.
    fn acid_in(&self, stain: Volume) -> Option<Mass> {
        let strength: Fraction = self.figures.value("stain-acid-share");
        Solution::hydrochloric(strength).ok()?.mass_in(stain).ok()
    }

    /// Neutralizer solution over the whole floor.
    fn solution(&self) -> Spread<Volume> {
        let area = self.area().as_square_feet();
        self.three("neutralizer-spread").map(|gallons| Volume::us_gallons(gallons * area))
    }

    pub(super) fn water_and_waste_lines(&self) -> Vec<Line> {
        let outdoor = self.slab.exposure() == Exposure::Exterior;
        let per_pass_id = if outdoor { "rinse-water-outdoor" } else { "rinse-water-indoor" };
        let area = self.area().as_square_feet();
        let rinse: Spread<Volume> = self
            .three(per_pass_id)
            .zip(self.three("rinse-passes"), |per_pass, passes| Volume::us_gallons(per_pass * passes * area));
        let waste = (rinse + self.solution()).zip(self.three("wet-vacuum-recovery"), |volume, share| volume * share);
        let drum = self.three("waste-drum").usual * self.figures.number("drum-fill");
        let drums = waste.map(|volume| (volume.as_us_gallons() / drum).ceil() as u32);
        vec![
            self.line(
                Item::RinseWater,
                Amount::Volume(rinse),
                &[per_pass_id, "rinse-passes"],
                vec![OrderNote::StopOnTests],
            ),
            self.line(
                Item::WasteWater,
                Amount::Volume(waste),
                &["wet-vacuum-recovery"],
                vec![OrderNote::AskSewerAuthority],
            ),
            self.line(Item::Drums, Amount::Pieces(drums), &["waste-drum"], Vec::new()),
        ]
    }

    pub(super) fn sealer_line(&self) -> Option<Line> {
        let chosen = self.slab.last::<SealerChosen>()?;
        let record = self.trade.sealer(&chosen.body.sealer)?;
        let waste = self.allowance("sealer-waste");
        let coats = match chosen.body.coats {
            Some(coats) => Spread::exactly(coats),
            None => Spread {
                low: record.coats_low.into(),
                usual: u32::from(record.coats_low + record.coats_high).div_ceil(2),
                high: record.coats_high.into(),
            },
        };
        let film = chosen.body.solids.as_ref().zip(chosen.body.dry_film.as_ref());
        let by_film = film.map(|(solids, dry)| {
            coats.zip(waste, |coats, loss| {
                let job = CoatingJob {
                    area: self.area(),
                    volume_solids: solids.value(),
                    dry_per_coat: dry.value(),
                    coats,
                    loss: Fraction::share(loss).expect("the loader admits only shares as waste"),
                };
                job.volume().ok()
            })
        });
        let by_film = match by_film {
            Some(Spread { low: Some(low), usual: Some(usual), high: Some(high) }) => Some(Spread { low, usual, high }),
            _ => None,
        };
        let (need, how) = match by_film {
            Some(need) => (need, OrderNote::SealerByFilm),
            None => {
                let (far_low, far_high) = record.coverage();
                let per_gallon = |c: units::Coverage| self.area() / c;
                let one_coat = Spread {
                    low: per_gallon(far_high),
                    usual: (per_gallon(far_low) + per_gallon(far_high)) / 2.0,
                    high: per_gallon(far_low),
                };
                let bare = one_coat.zip(coats, |volume, coats| volume * f64::from(coats));
                (bare.zip(waste, |volume, waste| volume * (1.0 + waste)), OrderNote::SealerByCoverage)
            }
        };
        let sizes: Vec<Volume> = self.trade.pack("sealer").map(Pack::sizes).unwrap_or_default();
        Some(Line {
            item: Item::Sealer,
            which: Some(record.id.clone()),
            need: Amount::Volume(need),
            buy: liquid(need.high, &sizes),
            notes: vec![how, OrderNote::MakersSheetGoverns],
            grade: Grade::CommonPractice,
            facts: vec![record.id.clone(), "sealer-waste".to_owned()],
            evidence: vec![chosen.entry.id],
        })
    }

    pub(super) fn protection_lines(&self) -> Vec<Line> {
        let drawn = self.slab.plan().and_then(slab_plan::Plan::perimeter);
        let (perimeter, note) = match drawn {
            Some(perimeter) => (perimeter, OrderNote::PerimeterFromPlan),
            None => (self.area().side_of_square() * 4.0, OrderNote::PerimeterOfSquare),
        };
        let band: Length = self.figures.value("masking-band");
        let outdoor = self.slab.exposure() == Exposure::Exterior;
        let board = self.three("protective-board").map(|factor| self.area() * factor);
        let mut lines = Vec::new();
        if !outdoor {
            let plastic = self.three("masking-plastic").map(|factor| perimeter * band * factor);
            lines.push(self.line(Item::MaskingPlastic, Amount::Area(plastic), &["masking-plastic"], vec![note]));
        }
        lines.push(self.line(Item::ProtectiveBoard, Amount::Area(board), &["protective-board"], Vec::new()));
        lines
    }
}
