//! The diagrams of a session as screens of several sizes show them, for a count of their flaws.

use super::diagram::compose;
use super::regions::regions;
use crate::screen::model::{Model, Working};
use crate::screen::theme::{Depth, Theme};
use crate::session::Session;
use crate::sketch::{Marks, Picture, Scene};
use crate::text::{Manner, Words};
use ratatui::layout::Rect;

/// One diagram on one screen.
#[derive(Clone, Debug)]
pub struct Sight {
    /// Which of the screens.
    pub screen: usize,
    /// What is to be drawn.
    pub marks: Marks,
    /// The drawing as it was asked for.
    pub scene: Scene,
    /// The drawing on the grid.
    pub picture: Picture,
    /// False if the legend does not stand in full below it.
    pub whole: bool,
}

/// Screens without colour, of fixed sizes, on which one problem is looked at.
pub struct Onlooker {
    screens: Vec<Model>,
    /// What was seen of it: the screen, what was drawn, columns and rows.
    seen: Vec<(usize, Marks, (u16, u16))>,
}

impl Onlooker {
    /// Screens of these columns and rows; true for one that can show more than ASCII.
    pub fn new(screens: &[(u16, u16, bool)]) -> Onlooker {
        let depth = Depth::None;
        let screen = |&(columns, rows, unicode): &(u16, u16, bool)| {
            Model::new(Words::english(), Theme { depth, unicode }, (columns, rows))
        };
        Onlooker {
            screens: screens.iter().map(screen).collect(),
            seen: Vec::new(),
        }
    }

    /// Forgets the problem that was looked at.
    pub fn forget(&mut self) {
        self.seen.clear();
    }

    /// The diagram of every stage that can be looked at now, on each screen that has room for
    /// one; but none a second time.
    pub fn look(&mut self, session: &Session) -> Vec<Sight> {
        let mut open = Working::new(Box::new(session.clone()), Manner::default());
        let mut sights = Vec::new();
        for stage in 0..open.view.stages.len() {
            open.stage = Some(stage);
            for (screen, model) in self.screens.iter().enumerate() {
                let (columns, rows) = model.size;
                let area = regions(model, &open, Rect::new(0, 0, columns, rows)).diagram;
                if area.height == 0 || area.width == 0 {
                    continue;
                }
                let marks = open.view.stages[stage].clone();
                let sight = (screen, marks.clone(), (area.width, area.height));
                if self.seen.contains(&sight) {
                    continue;
                }
                self.seen.push(sight);
                let composed = compose(model, &open, (area.width, area.height));
                sights.push(Sight {
                    screen,
                    marks,
                    whole: !composed.cut_off(area.height),
                    scene: composed.scene,
                    picture: composed.picture,
                });
            }
        }
        sights
    }
}
