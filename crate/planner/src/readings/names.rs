//! What things are called in a sentence.
use super::study::Study;
use crate::layout::{Id, Item};
use crate::scene::flag;
use crate::words::{Arg, say};

impl Study<'_> {
    /// The name an object goes by.
    #[must_use]
    pub fn name(&self, id: Id) -> String {
        let l = self.layout();
        if id == Id(0) {
            let own = &l.table.surface.name;
            return if own.is_empty() {
                say("ground-board", &[])
            } else {
                own.clone()
            };
        }
        let item = self.item(id).map(|item| {
            let alike = |i: &Item| i.name == item.name && i.number != item.number;
            let plain = || item.name.clone();
            if l.items.iter().any(alike) {
                let number = Arg::Text(item.number.to_string());
                let args = [("thing", Arg::Text(plain())), ("number", number)];
                say("name-numbered", &args)
            } else {
                plain()
            }
        });
        let linen = || {
            let own = l.linens.iter().find(|i| i.id == id)?;
            let plain = own.name.clone();
            let alike = l.linens.iter().any(|i| i.id != id && i.name == plain);
            Some(if alike {
                let hour = self.picture().hour_of(own.at.vec());
                let args = [("thing", Arg::Text(plain)), ("clock", Arg::Text(hour))];
                say("name-at", &args)
            } else {
                plain
            })
        };
        let hand = || l.hands.iter().find(|h| h.id == id).map(|h| flag(l, h));
        let crop = || l.crops.iter().find(|c| c.id == id).map(|c| c.name.clone());
        item.or_else(linen)
            .or_else(hand)
            .or_else(crop)
            .unwrap_or_default()
    }

    /// The names of these for a list. Things of one name are one entry when all
    /// of that name are listed; else each is told from the others.
    pub(super) fn names(&self, ids: &[Id]) -> Vec<String> {
        let items = &self.layout().items;
        let mut out: Vec<String> = Vec::new();
        for id in ids {
            let all = self.item(*id).filter(|item| {
                let mut alike = items.iter().filter(|i| i.name == item.name);
                alike.all(|i| ids.contains(&i.id))
            });
            let name = all.map_or_else(|| self.name(*id), |item| item.name.clone());
            if !out.contains(&name) {
                out.push(name);
            }
        }
        out
    }
}
