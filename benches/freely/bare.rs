//! Bare wrong values: a name and a number of three figures with nothing to show where it comes from.
//!
//! The true values are the pupils' own arithmetic (`scene.rs`). A number is wrong where it is further
//! from the true value than whoever carries three figures all the way can come.

use super::scene::{Drawn, Scene};
use leverwright::session::Sign;
use rand::Rng;
use rand::SeedableRng;
use rand::rngs::ChaCha8Rng;
use std::collections::BTreeMap;

/// Half a last unit of 1.00, as a share.
const HALF: f64 = 0.005;
/// Wrong numbers tried for each value.
const TRIED: usize = 8;
/// What is worked out from rounded values and rounded sines is no nearer than so many half units of
/// what goes into it.
const STEPS: f64 = 2.0;

/// By quantity and distance from the true value: typed, accepted, and two of those accepted.
pub(super) type Rates = BTreeMap<String, (usize, usize, Vec<String>)>;

/// So many problems of each lesson.
pub(super) fn measure_bare(problems: u64, seed: u64) -> Rates {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let mut rates = Rates::new();
    for drawn in Drawn::some(problems, seed) {
        let scene = Scene::of(&drawn.problem);
        for (name, value, room) in quantities(&scene) {
            for _ in 0..TRIED {
                let typed = three_figures(wrong_number(value, &mut random));
                let wrong: f64 = typed.parse().unwrap();
                let apart = (wrong.abs() - value.abs()).abs();
                if apart <= room {
                    continue;
                }
                let line = format!("{name} = {typed} N");
                let sign = drawn.begun().submit(&line).line.sign;
                let kind = if name.starts_with('W') {
                    "weight"
                } else {
                    name.as_str()
                };
                let far = match apart / value.abs() {
                    share if share < 0.02 => "under 2 %",
                    share if share < 0.1 => "2 to 10 %",
                    _ => "over 10 %",
                };
                let rate = rates.entry(format!("{kind}, {far}")).or_default();
                rate.0 += 1;
                if matches!(sign, Sign::Right | Sign::Rounded | Sign::Follows) {
                    rate.1 += 1;
                    if rate.2.len() < 2 {
                        let at = format!("{} --seed {}", drawn.lesson, drawn.seed);
                        rate.2.push(format!("{at}: {line} (true: {value:.2})"));
                    }
                }
            }
        }
    }
    rates
}

/// The quantities that are asked, with how far three figures may put them off.
fn quantities(scene: &Scene) -> Vec<(String, f64, f64)> {
    let weights = scene.weights.iter();
    let mut found: Vec<(String, f64, f64)> = weights
        .map(|weight| {
            let value = weight.mass * scene.gravity;
            (weight.name.clone(), value, HALF * value)
        })
        .collect();
    let load: f64 = found.iter().map(|(_, value, _)| value).sum();
    let tension = scene.tension();
    found.push(("T".to_owned(), tension, STEPS * HALF * tension));
    // A difference is as far off as what it is the difference of.
    let room = HALF * (load + STEPS * tension);
    let (right, up) = scene.hinge;
    if scene.level {
        found.push(("Hx".to_owned(), right, room));
        found.push(("Hy".to_owned(), up, room));
        found.push(("H".to_owned(), right.hypot(up), room));
    } else {
        found.push(("H".to_owned(), up, room));
    }
    found.retain(|(_, value, room)| value.abs() > *room);
    found
}

/// A digit slipped, two digits exchanged, a power of ten, or another number altogether.
fn wrong_number(value: f64, random: &mut ChaCha8Rng) -> f64 {
    let digits = three_figures(value.abs());
    let mut number: Vec<char> = digits.chars().collect();
    let at = random.next_u32() as usize % number.len();
    match random.next_u32() % 4 {
        0 if number[at].is_ascii_digit() => {
            let digit = number[at].to_digit(10).unwrap_or(0);
            number[at] = char::from_digit((digit + 1) % 10, 10).unwrap_or('0');
            number.iter().collect::<String>().parse().unwrap()
        }
        1 if at + 1 < number.len() && number[at] != '.' && number[at + 1] != '.' => {
            number.swap(at, at + 1);
            number.iter().collect::<String>().parse().unwrap()
        }
        2 => {
            value.abs()
                * if random.next_u32().is_multiple_of(2) {
                    10.0
                } else {
                    0.1
                }
        }
        _ => {
            let share = f64::from(random.next_u32()) / f64::from(u32::MAX);
            let apart = 0.006 * (0.5_f64 / 0.006).powf(share);
            let sign = if random.next_u32().is_multiple_of(2) {
                1.0
            } else {
                -1.0
            };
            value.abs() * (1.0 + sign * apart)
        }
    }
}

fn three_figures(value: f64) -> String {
    let places = (2.0 - value.abs().max(1e-9).log10().floor()).max(0.0);
    let scale = 10_f64.powf(2.0 - value.abs().max(1e-9).log10().floor());
    format!("{:.*}", places as usize, (value * scale).round() / scale)
}
