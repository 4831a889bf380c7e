//! A pupil who works rightly in a manner of her own, with her own arithmetic and spelling.

use super::manner::{
    Layout, Method, Naming, Order, Pivot, SPELLINGS, Sense, Style, plain, rounded,
};
use super::scene::{Scene, cross};
use rand::Rng;
use rand::rngs::ChaCha8Rng;

/// A force in a balance: what stands for it, and its turning or pushing for each newton.
struct Part {
    factors: Vec<String>,
    sign: f64,
}

/// What a pupil does wrong, once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Slip {
    None,
    /// One of the weights comes out so many times too large.
    Weight(usize, f64),
    /// The pull comes out so many times too large.
    Pull(f64),
    /// The cosine of the angle between rope and body stands for its sine.
    Ratio,
}

/// A pupil at work on one problem.
pub(super) struct Pupil<'a> {
    scene: &'a Scene,
    angle_names: &'a [String],
    style: Style,
    slip: Slip,
    /// Her weights, as she carries them.
    weights: Vec<f64>,
    /// The pull and the hinge's parts, each in her sense, as she carries them.
    tension: f64,
    parts: (f64, f64),
    /// Her senses of the hinge's parts, +1 to the right and up.
    senses: (f64, f64),
}

/// The definitions of a working and the relations of it, with the one for the pull without its value.
pub(super) fn relations(
    scene: &Scene,
    angle_names: &[String],
    style: Style,
) -> (Vec<String>, Vec<String>) {
    let pupil = Pupil::at_work(scene, angle_names, style, Slip::None);
    let [definitions, mut relations, values] = pupil.lines();
    relations.retain(|line| !line.contains("sqrt"));
    let pull = values.first().and_then(|line| line.rsplit_once(" = "));
    relations.extend(pull.map(|(form, _)| form.to_owned()));
    (definitions, relations)
}

/// A right working, line by line.
pub(super) fn working(
    scene: &Scene,
    angle_names: &[String],
    style: Style,
    random: &mut ChaCha8Rng,
) -> Vec<String> {
    let pupil = Pupil::at_work(scene, angle_names, style, Slip::None);
    let [definitions, relations, values] = pupil.lines();
    let mut lines = definitions;
    let mut rest: Vec<String> = match style.order {
        Order::RelationsFirst => relations.into_iter().chain(values).collect(),
        _ => {
            let mut values = values.into_iter();
            let mut both = Vec::new();
            for relation in relations {
                both.push(relation);
                both.extend(values.next());
            }
            both.extend(values);
            both
        }
    };
    if style.order == Order::Mixed {
        let before = rest.clone();
        for at in (1..rest.len()).rev() {
            rest.swap(at, random.next_u32() as usize % (at + 1));
        }
        // A number of two figures can only be known by the line that it comes from.
        if style.figures == 2 {
            let is_value = |line: &String| line.ends_with('N') || line.ends_with('°');
            let mut values = before.into_iter().filter(is_value);
            for line in rest.iter_mut().filter(|line| is_value(line)) {
                *line = values.next().unwrap_or_default();
            }
        }
    }
    lines.extend(rest);
    match SPELLINGS[style.spelling].3 {
        true => lines.iter().map(|line| line.replace('.', ",")).collect(),
        false => lines,
    }
}

impl<'a> Pupil<'a> {
    /// A pupil with what she has worked out and carries on.
    pub(super) fn at_work(
        scene: &'a Scene,
        angle_names: &'a [String],
        style: Style,
        slip: Slip,
    ) -> Pupil<'a> {
        let carried = |value: f64| {
            rounded(value, style.figures)
                .parse::<f64>()
                .unwrap_or(value)
        };
        let weights: Vec<f64> = scene
            .weights
            .iter()
            .enumerate()
            .map(|(at, weight)| {
                let factor = match slip {
                    Slip::Weight(slipped, factor) if slipped == at => factor,
                    _ => 1.0,
                };
                carried(weight.mass * scene.gravity * factor)
            })
            .collect();
        let senses = match style.sense {
            Sense::Foreseen => (scene.hinge.0.signum(), scene.hinge.1.signum()),
            Sense::RightUp => (1.0, 1.0),
            Sense::LeftDown => (-1.0, -1.0),
        };
        let mut pupil = Pupil {
            scene,
            angle_names,
            style,
            slip,
            weights,
            tension: 0.0,
            parts: (0.0, 0.0),
            senses,
        };
        let turning = |at: f64| at * scene.along.0.abs();
        let zipped = pupil.weights.iter().zip(&scene.weights);
        let moment: f64 = zipped.map(|(size, weight)| size * turning(weight.at)).sum();
        let arm = cross(
            (scene.knot * scene.along.0, scene.knot * scene.along.1),
            scene.pull,
        )
        .abs();
        pupil.tension = carried(moment / arm * pupil.pull_slip());
        pupil.settle();
        pupil
    }

    /// How many times too large her pull comes out for what she carries.
    fn pull_slip(&self) -> f64 {
        match self.slip {
            Slip::Pull(factor) => factor,
            Slip::Ratio => self.scene.angles()[2].to_radians().tan(),
            _ => 1.0,
        }
    }

    /// The hinge's parts as they follow from the weights and the pull that she carries.
    fn settle(&mut self) {
        let (scene, pupil) = (self.scene, self);
        let figures = pupil.style.figures;
        let carried = |value: f64| rounded(value, figures).parse::<f64>().unwrap_or(value);
        let senses = pupil.senses;
        let total: f64 = pupil.weights.iter().sum();
        let level = -pupil.tension * scene.pull.0 * senses.0;
        let upright = (total - pupil.tension * scene.pull.1) * senses.1;
        pupil.parts = (carried(level), carried(upright));
    }

    /// The same pupil with all that she mended worked anew.
    pub(super) fn mended(&self) -> Pupil<'a> {
        Pupil::at_work(self.scene, self.angle_names, self.style, Slip::None)
    }

    /// The same pupil after she found the slip in a weight or the pull and goes on with what else she
    /// has: her old pull where a weight was wrong.
    pub(super) fn half_mended(&self) -> Pupil<'a> {
        let mut mended = self.mended();
        if let Slip::Weight(..) = self.slip {
            mended.tension = self.tension;
            mended.settle();
        }
        mended
    }

    /// The definitions, the relations and the values, in the order in which they follow.
    pub(super) fn lines(&self) -> [Vec<String>; 3] {
        let scene = self.scene;
        let times = SPELLINGS[self.style.spelling].0;
        let mut definitions = Vec::new();
        for (at, weight) in scene.weights.iter().enumerate() {
            let numbers = format!("{}{times}{}", plain(weight.mass), plain(scene.gravity));
            let value = self.newtons(self.weights[at]);
            let name = self.weight_name(at);
            if matches!(self.slip, Slip::Weight(slipped, _) if slipped == at) {
                definitions.push(format!("{name} = {value}"));
                continue;
            }
            definitions.push(match self.style.naming {
                Naming::Names => format!(
                    "{name} = {}{times}g = {numbers} = {value}",
                    weight.mass_name
                ),
                _ => format!("{name} = {numbers} = {value}"),
            });
        }
        if let Method::Arms = self.style.method
            && self.style.pivot == Pivot::Hinge
            && scene.along.1.abs() > 1e-9
        {
            for (at, weight) in scene.weights.iter().enumerate() {
                let arm = rounded(weight.at * scene.along.0.abs(), 6);
                let formula = self.product(&[
                    self.length(weight.at, &weight.at_name),
                    self.ratio("cos", 0),
                ]);
                definitions.push(format!("x{} = {formula} = {arm} m", at + 1));
            }
        }
        let mut relations = vec![self.moments(self.style.pivot)];
        let mut values = vec![self.tension_line()];
        let (level, upright) = (self.forces(false), self.forces(true));
        if scene.level {
            relations.push(level);
            values.push(self.part_line(false));
        }
        relations.push(upright);
        values.push(self.part_line(true));
        if scene.level {
            let (right, up) = (self.parts.0.abs(), self.parts.1.abs());
            let figures = self.style.figures;
            relations.push("H = sqrt(Hx^2 + Hy^2)".to_owned());
            let (x, y) = (rounded(right, figures), rounded(up, figures));
            let size = self.newtons(right.hypot(up));
            values.push(format!("H = sqrt({x}^2 + {y}^2) = {size}"));
            let angle = rounded(up.atan2(right).to_degrees(), figures.max(3));
            values.push(format!("psi = atan({y}/{x}) = {angle}°"));
        }
        [definitions, relations, values]
    }

    fn newtons(&self, value: f64) -> String {
        format!("{} N", rounded(value, self.style.figures))
    }

    fn weight_name(&self, at: usize) -> String {
        match self.style.naming {
            Naming::OwnNames => format!("G{}", at + 1),
            _ => self.scene.weights[at].name.clone(),
        }
    }

    /// What stands for a weight in an equation.
    fn weight(&self, at: usize) -> String {
        match self.style.naming {
            Naming::Numbers => self.with_unit(rounded(self.weights[at], self.style.figures), "N"),
            _ => self.weight_name(at),
        }
    }

    fn with_unit(&self, number: String, unit: &str) -> String {
        match SPELLINGS[self.style.spelling].2 {
            true => format!("{number} {unit}"),
            false => number,
        }
    }

    fn length(&self, value: f64, name: &str) -> String {
        match self.style.naming == Naming::Names && !name.is_empty() {
            true => name.to_owned(),
            false => self.with_unit(plain(value), "m"),
        }
    }

    /// Sine or cosine of one of the scene's angles; nothing where it is one.
    fn ratio(&self, function: &str, angle: usize) -> String {
        let degrees = self.scene.angles()[angle];
        let value = match function {
            "sin" => degrees.to_radians().sin(),
            _ => degrees.to_radians().cos(),
        };
        if (value - 1.0).abs() < 1e-9 {
            return String::new();
        }
        let text = match self.style.naming {
            Naming::Names => self.angle_names[angle].clone(),
            _ => plain(degrees),
        };
        let text = match text.parse::<f64>() {
            Ok(number) => plain(number),
            Err(_) => text,
        };
        (SPELLINGS[self.style.spelling].1)(function, &text)
    }

    fn product(&self, factors: &[String]) -> String {
        let told: Vec<&str> = factors
            .iter()
            .filter(|one| !one.is_empty())
            .map(String::as_str)
            .collect();
        told.join(SPELLINGS[self.style.spelling].0)
    }

    /// The distance along the body between two places, in names where they are known.
    fn between(&self, pivot: f64, pivot_name: &str, at: f64, name: &str) -> String {
        if self.style.naming != Naming::Names || name.is_empty() || pivot_name.is_empty() {
            return self.with_unit(plain((at - pivot).abs()), "m");
        }
        if pivot == 0.0 {
            return name.to_owned();
        }
        if at == 0.0 {
            return pivot_name.to_owned();
        }
        match at > pivot {
            true => format!("({name} - {pivot_name})"),
            false => format!("({pivot_name} - {name})"),
        }
    }

    /// A force's terms in the balance of moments, for each newton of it.
    fn turning(
        &self,
        symbol: &str,
        unit: (f64, f64),
        angles: (usize, usize),
        run: (f64, String),
    ) -> Vec<Part> {
        let scene = self.scene;
        let (offset, length) = run;
        let place = (offset * scene.along.0, offset * scene.along.1);
        let whole = cross(place, unit);
        if offset.abs() < 1e-12 {
            return Vec::new();
        }
        let (slope, between) = angles;
        let part = |sign: f64, factors: Vec<String>| Part {
            sign: sign.signum(),
            factors,
        };
        match self.style.method {
            Method::Components | Method::Arms if whole.abs() < 1e-9 => Vec::new(),
            Method::Components => vec![part(
                whole,
                vec![symbol.to_owned(), self.acute(between), length],
            )],
            Method::Arms => vec![part(
                whole,
                vec![symbol.to_owned(), length, self.acute(between)],
            )],
            Method::Coordinates => {
                let mut terms = Vec::new();
                // x·Fy, then −y·Fx.
                if (place.0 * unit.1).abs() > 1e-9 {
                    let upright = self.ratio("sin", slope);
                    let factors = vec![
                        symbol.to_owned(),
                        upright,
                        length.clone(),
                        self.ratio("cos", 0),
                    ];
                    terms.push(part(place.0 * unit.1, factors));
                }
                if (place.1 * unit.0).abs() > 1e-9 {
                    let level = self.ratio("cos", slope);
                    let factors = vec![symbol.to_owned(), level, length, self.ratio("sin", 0)];
                    terms.push(part(-place.1 * unit.0, factors));
                }
                terms
            }
        }
    }

    /// The ratio across the body: 3 for upright forces, 4 for level ones, else the rope.
    fn acute(&self, between: usize) -> String {
        match between {
            3 => self.ratio("cos", 0),
            4 => self.ratio("sin", 0),
            _ => self.ratio("sin", 2),
        }
    }

    fn moments(&self, pivot: Pivot) -> String {
        let scene = self.scene;
        let (here, name) = match pivot {
            Pivot::Hinge => (0.0, "0"),
            Pivot::Knot => (scene.knot, scene.knot_name.as_str()),
            Pivot::Tip => (scene.length, scene.length_name.as_str()),
        };
        let run = |at: f64, its: &str| (at - here, self.between(here, name, at, its));
        let own_arms = matches!(self.style.method, Method::Arms)
            && pivot == Pivot::Hinge
            && scene.along.1.abs() > 1e-9;
        let mut parts = Vec::new();
        for (at, weight) in scene.weights.iter().enumerate() {
            let force = self.weight(at);
            let term = self.upright(&force, -1.0, run(weight.at, &weight.at_name));
            match own_arms {
                true => parts.extend(term.into_iter().map(|part| Part {
                    factors: vec![force.clone(), format!("x{}", at + 1)],
                    ..part
                })),
                false => parts.extend(term),
            }
        }
        parts.extend(self.turning("T", scene.pull, (1, 2), run(scene.knot, &scene.knot_name)));
        if scene.level {
            let level = (self.senses.0, 0.0);
            let (offset, length) = run(0.0, "0");
            let place = scene.along.1 * offset;
            if place.abs() > 1e-9 {
                let sign = (-place * level.0).signum();
                parts.push(Part {
                    sign,
                    factors: vec!["Hx".to_owned(), length, self.ratio("sin", 0)],
                });
            }
            parts.extend(self.upright("Hy", self.senses.1, run(0.0, "0")));
        } else {
            parts.extend(self.upright("H", self.senses.1, run(0.0, "0")));
        }
        let about = match pivot {
            Pivot::Hinge => "about the hinge: ",
            Pivot::Knot => "",
            Pivot::Tip => "about the tip: ",
        };
        // The tip by name is the far end of the body only where the hinge is at its foot.
        let about = match scene.length_name.is_empty() || self.style.spelling.is_multiple_of(2) {
            true => "",
            false => about,
        };
        format!("{about}{}", self.laid_out(&parts))
    }

    /// An upright force in the balance of moments.
    fn upright(&self, symbol: &str, up: f64, run: (f64, String)) -> Vec<Part> {
        let (offset, length) = run;
        let turning = offset * self.scene.along.0 * up;
        if turning.abs() < 1e-9 {
            return Vec::new();
        }
        let ratio = self.ratio("cos", 0);
        let factors = match self.style.method {
            Method::Components => vec![symbol.to_owned(), ratio, length],
            _ => vec![symbol.to_owned(), length, ratio],
        };
        vec![Part {
            sign: turning.signum(),
            factors,
        }]
    }

    /// The balance of the upright or of the level forces.
    fn forces(&self, upright: bool) -> String {
        let scene = self.scene;
        let mut parts = Vec::new();
        let (pull, function, hinge, sense) = match upright {
            true => (
                scene.pull.1,
                "sin",
                if scene.level { "Hy" } else { "H" },
                self.senses.1,
            ),
            false => (scene.pull.0, "cos", "Hx", self.senses.0),
        };
        if upright {
            for at in 0..scene.weights.len() {
                parts.push(Part {
                    sign: -1.0,
                    factors: vec![self.weight(at)],
                });
            }
        }
        if pull.abs() > 1e-9 {
            let factors = vec!["T".to_owned(), self.ratio(function, 1)];
            parts.push(Part {
                sign: pull.signum(),
                factors,
            });
        }
        parts.push(Part {
            sign: sense,
            factors: vec![hinge.to_owned()],
        });
        self.laid_out(&parts)
    }

    fn laid_out(&self, parts: &[Part]) -> String {
        let joined = |sign: f64, parts: &[&Part]| {
            let mut text = String::new();
            for part in parts {
                let mark = match (part.sign * sign < 0.0, text.is_empty()) {
                    (true, true) => "-",
                    (true, false) => " - ",
                    (false, true) => "",
                    (false, false) => " + ",
                };
                text.push_str(mark);
                text.push_str(&self.product(&part.factors));
            }
            match text.is_empty() {
                true => "0".to_owned(),
                false => text,
            }
        };
        let all: Vec<&Part> = parts.iter().collect();
        let side = |sign: f64| {
            parts
                .iter()
                .filter(|part| part.sign == sign)
                .collect::<Vec<_>>()
        };
        match self.style.layout {
            Layout::Sides => format!(
                "{} = {}",
                joined(-1.0, &side(-1.0)),
                joined(1.0, &side(1.0))
            ),
            Layout::Zero => format!("{} = 0", joined(1.0, &all)),
            Layout::ZeroFirst => format!("0 = {}", joined(-1.0, &all)),
        }
    }

    /// The pull from the moments about the hinge, with its value.
    fn tension_line(&self) -> String {
        let scene = self.scene;
        let mut sum = Vec::new();
        for (at, weight) in scene.weights.iter().enumerate() {
            let length = self.length(weight.at, &weight.at_name);
            sum.push(self.product(&[self.weight(at), length, self.ratio("cos", 0)]));
        }
        if let Slip::Pull(_) = self.slip {
            return format!("T = {}", self.newtons(self.tension));
        }
        let function = if self.slip == Slip::Ratio {
            "cos"
        } else {
            "sin"
        };
        let under = self.product(&[
            self.length(scene.knot, &scene.knot_name),
            self.ratio(function, 2),
        ]);
        format!(
            "T = ({})/({under}) = {}",
            sum.join(" + "),
            self.newtons(self.tension)
        )
    }

    /// A part of the hinge's force with its value.
    fn part_line(&self, upright: bool) -> String {
        let scene = self.scene;
        let tension = self.with_unit(rounded(self.tension, self.style.figures), "N");
        let (name, pull, function, value, sense) = match upright {
            true if scene.level => ("Hy", scene.pull.1, "sin", self.parts.1, self.senses.1),
            true => ("H", scene.pull.1, "sin", self.parts.1, self.senses.1),
            false => ("Hx", scene.pull.0, "cos", self.parts.0, self.senses.0),
        };
        let mut text = String::new();
        let mut add = |negative: bool, part: &str| {
            let mark = match (negative, text.is_empty()) {
                (true, true) => "-",
                (true, false) => " - ",
                (false, true) => "",
                (false, false) => " + ",
            };
            text.push_str(mark);
            text.push_str(part);
        };
        if upright {
            for at in 0..scene.weights.len() {
                let weight = match self.style.naming {
                    Naming::Names => {
                        self.with_unit(rounded(self.weights[at], self.style.figures), "N")
                    }
                    _ => self.weight(at),
                };
                add(sense < 0.0, &weight);
            }
        }
        if pull.abs() > 1e-9 {
            add(
                pull * sense > 0.0,
                &self.product(&[tension, self.ratio(function, 1)]),
            );
        }
        format!("{name} = {text} = {}", self.newtons(value))
    }
}
