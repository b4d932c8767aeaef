//! Keeps the book: changes show at once, and go to the store one after another.

use super::kept::Damaged;
use super::local::{Local, Whole};
use super::place::{Failure, Place};
use super::record::{Key, fresh_id};
use super::settle::{Met, Outside, Settled, Wished};
use super::shelf::{BookAct, Change, Shelf};
use super::tabs::Tabs;
use super::{clock_time, promise};
use crate::shared::Shared;
use crate::words::{fill, words};
use standfast_core::book::Book;
use std::cell::RefCell;
use std::collections::VecDeque;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::Callback;

/// Where the book is kept.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum At {
    /// Not known yet.
    #[default]
    Starting,
    Indexed,
    Local,
    /// The browser keeps nothing for this page.
    Nowhere,
}

/// How it stands with keeping.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Keeping {
    pub at: At,
    /// Entries whose last change is not kept yet.
    pub unkept: usize,
    /// Why the last write failed, until one succeeds.
    pub failure: Option<Failure>,
    /// Whether the browser promised not to clear it by itself; not known where it cannot say.
    pub promised: Option<bool>,
}

/// What was done last, to say it and offer to take it back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Done {
    Changed(String),
    Archived(String),
    TakenOut(String),
    Removed(String),
    /// So many entries.
    Imported(usize),
}

/// All that the page shows of it.
#[derive(Clone, PartialEq)]
pub struct Present {
    pub book: Shared<Book>,
    pub keeping: Keeping,
    pub done: Option<Done>,
    pub met: Vec<Met>,
    pub damaged: Rc<Vec<Damaged>>,
    /// Whether the last change can be taken back.
    pub can_undo: bool,
}

impl Default for Present {
    fn default() -> Self {
        Self {
            book: Rc::new(Book::default()).into(),
            keeping: Keeping::default(),
            done: None,
            met: Vec::new(),
            damaged: Rc::default(),
            can_undo: false,
        }
    }
}

#[derive(Default)]
struct Inner {
    shelf: Shelf,
    present: Present,
    /// What is to be written, each in one go.
    queue: VecDeque<Vec<Change>>,
    writing: bool,
    place: Option<Rc<Place>>,
    tabs: Option<Tabs>,
    /// The last write to the plain storage, and its count.
    last: Option<(Vec<Change>, u64)>,
    /// Whether the browser was asked for its promise.
    asked: bool,
    show: Callback<Present>,
}

/// The keeper.
#[derive(Default)]
pub struct Keeper(RefCell<Inner>);

impl Keeper {
    /// Finds the store and takes over what it holds. What happened before that is written then.
    pub fn start(self: &Rc<Self>, show: Callback<Present>) {
        self.0.borrow_mut().show = show;
        let keeper = Rc::clone(self);
        spawn_local(async move {
            let place = Place::find().await.map(Rc::new);
            {
                let mut inner = keeper.0.borrow_mut();
                inner.present.keeping.at = match place.as_deref() {
                    Some(Place::Indexed(_)) => At::Indexed,
                    Some(Place::Local(_)) => At::Local,
                    None => At::Nowhere,
                };
                inner.place.clone_from(&place);
            }
            if let Some(place) = &place {
                bring_along(place).await;
                keeper.read_all(false).await;
                let tabs = Tabs::listen(&keeper);
                keeper.0.borrow_mut().tabs = Some(tabs);
                // Read once more: a word of another tab may have been missed in between.
                keeper.read_all(true).await;
            }
            let promised = promise::there_is_one().await;
            keeper.0.borrow_mut().present.keeping.promised = promised;
            keeper.show();
            keeper.write_next();
        });
    }

    /// Something happens to the book.
    pub fn act(self: &Rc<Self>, act: &BookAct) {
        {
            let mut inner = self.0.borrow_mut();
            let changes = inner.shelf.changes(act);
            match act {
                BookAct::Hush => (inner.present.done, inner.present.met) = (None, Vec::new()),
                BookAct::Again => inner.again(),
                _ => inner.present.done = done(act, &inner.shelf, &changes),
            }
            if !changes.is_empty() {
                inner.shelf.apply(&changes);
                inner.queue.push_back(changes);
                inner.again();
                inner.present.book = Rc::new(inner.shelf.book()).into();
            }
        }
        self.show();
        self.write_next();
    }

    /// Whether leaving now would lose something.
    pub fn would_lose(&self) -> bool {
        let inner = self.0.borrow();
        let keeping = &inner.present.keeping;
        inner.shelf.waiting() > 0 && (keeping.failure.is_some() || keeping.at == At::Nowhere)
    }

    fn show(&self) {
        let (show, present) = {
            let mut inner = self.0.borrow_mut();
            inner.present.keeping.unkept = inner.shelf.waiting();
            inner.present.can_undo = !inner.shelf.changes(&BookAct::Undo).is_empty();
            (inner.show.clone(), inner.present.clone())
        };
        show.emit(present);
    }

    fn write_next(self: &Rc<Self>) {
        let (place, wishes) = {
            let mut inner = self.0.borrow_mut();
            let Some(place) = inner.place.clone() else { return };
            if inner.writing || inner.present.keeping.failure.is_some() {
                return;
            }
            let Some(changes) = inner.queue.front() else { return };
            let wishes = inner.shelf.wishes(changes);
            inner.writing = true;
            (place, wishes)
        };
        let keeper = Rc::clone(self);
        spawn_local(async move {
            let result = write(&place, &wishes).await;
            keeper.written(&wishes, result);
            keeper.show();
            keeper.write_next();
            promise::ask_once(&keeper).await;
        });
    }

    fn written(&self, wishes: &[Wished], result: Result<Settled, Failure>) {
        let mut inner = self.0.borrow_mut();
        inner.writing = false;
        match result {
            Ok(settled) => {
                let changes = inner.queue.pop_front().unwrap_or_default();
                inner.shelf.settled(wishes, &settled);
                if !settled.met.is_empty() {
                    inner.present.book = Rc::new(inner.shelf.book()).into();
                    inner.present.met.extend(settled.met);
                }
                let keys: Vec<Key> = settled.write.into_iter().map(|(key, _)| key).collect();
                if let Some(tabs) = &inner.tabs {
                    tabs.tell(&keys);
                }
                inner.last = Some((changes, settled.clock));
            }
            Err(failure) => inner.present.keeping.failure = Some(failure),
        }
    }

    /// Takes over what other tabs wrote under these keys.
    pub fn heard(self: &Rc<Self>, keys: Vec<Key>) {
        let Some(place) = self.0.borrow().place.clone() else { return };
        let keeper = Rc::clone(self);
        spawn_local(async move {
            let Ok(read) = place.read(Some(&keys)).await else { return };
            let mut found: Vec<_> = keys.into_iter().map(|key| (key, None)).collect();
            for (key, slot) in read.entries().into_iter().flatten() {
                found.iter_mut().filter(|(k, _)| *k == key).for_each(|(_, s)| *s = Some(slot.clone()));
            }
            keeper.0.borrow_mut().taken(|shelf| shelf.take(found));
            keeper.show();
        });
    }

    /// Takes over all that is in the store, if anything was written since.
    pub fn refresh(self: &Rc<Self>) {
        let keeper = Rc::clone(self);
        spawn_local(async move {
            keeper.read_all(true).await;
            keeper.show();
        });
    }

    async fn read_all(&self, only_newer: bool) {
        let Some(place) = self.0.borrow().place.clone() else { return };
        if only_newer {
            let seen = self.0.borrow().shelf.clock;
            match place.read(Some(&[])).await {
                Ok(read) if read.clock == seen => return,
                Ok(_) => {}
                Err(_) => return,
            }
        }
        match place.read(None).await {
            Ok(read) => {
                let (good, damaged): (Vec<_>, Vec<_>) = read.entries().into_iter().partition(Result::is_ok);
                let mut inner = self.0.borrow_mut();
                inner.present.damaged = Rc::new(damaged.into_iter().filter_map(Result::err).collect());
                inner.shelf.clock = read.clock;
                inner.taken(|shelf| shelf.take_all(good.into_iter().flatten().collect()));
            }
            Err(failure) => self.0.borrow_mut().present.keeping.failure = Some(failure),
        }
    }

    /// Another tab wrote the plain storage. Where it had not seen what was written here last, that is written again.
    pub fn heard_plain(self: &Rc<Self>, text: Option<String>) {
        let Ok(whole) = Whole::of(text) else { return };
        {
            let mut inner = self.0.borrow_mut();
            if let Some((changes, clock)) = inner.last.take() {
                let lost = whole.lacks(&changes, clock);
                if !lost.is_empty() {
                    inner.shelf.again(&lost);
                    inner.queue.push_back(lost);
                }
            }
        }
        let keeper = Rc::clone(self);
        spawn_local(async move {
            keeper.read_all(false).await;
            keeper.show();
            keeper.write_next();
        });
    }

    /// Whether there is something to lose that the browser has not promised to keep.
    pub fn needs_promise(&self) -> bool {
        let inner = self.0.borrow();
        inner.present.keeping.promised == Some(false) && *inner.present.book != Book::default()
    }

    /// Whether it was asked for before; from now on it was.
    pub fn asked(&self) -> bool {
        std::mem::replace(&mut self.0.borrow_mut().asked, true)
    }

    /// The browser has answered.
    pub fn promised(&self, answer: Option<bool>) {
        self.0.borrow_mut().present.keeping.promised = answer;
        self.show();
    }
}

impl Inner {
    /// Everything that is not kept yet goes into one write, which is tried again.
    fn again(&mut self) {
        if self.present.keeping.failure.take().is_some() && !self.writing {
            let changes: Vec<_> = self.queue.drain(..).flatten().collect();
            let together = self.shelf.together(&changes);
            if !together.is_empty() {
                self.queue.push_back(together);
            }
        }
    }

    fn taken(&mut self, take: impl FnOnce(&mut Shelf)) {
        take(&mut self.shelf);
        let book = self.shelf.book();
        if *self.present.book != book {
            self.present.book = Rc::new(book).into();
        }
    }
}

async fn write(place: &Place, wishes: &[Wished]) -> Result<Settled, Failure> {
    let called = |name: &str| fill(words().store.this_tab, &[("name", name), ("time", &clock_time())]);
    place.write(wishes, &mut Outside { called: &called, fresh: &mut fresh_id }).await
}

/// What the plain storage kept while there was no database comes along into it.
async fn bring_along(place: &Place) {
    if !matches!(place, Place::Indexed(_)) {
        return;
    }
    let Some(local) = Local::open() else { return };
    let entries = local.read(None).entries();
    let good: Vec<_> = entries.into_iter().collect::<Result<Vec<_>, _>>().unwrap_or_default();
    let wishes: Vec<_> = good
        .into_iter()
        .map(|(key, slot)| Wished {
            change: Change { key, was: None, to: Some(slot.record), order: slot.order },
            base: 0,
        })
        .collect();
    if !wishes.is_empty() && write(place, &wishes).await.is_ok() {
        local.forget();
    }
}

/// What to say of an act that changed something.
fn done(act: &BookAct, shelf: &Shelf, changes: &[Change]) -> Option<Done> {
    let name = |key: &Key| shelf.get(key).map(|slot| slot.record.name()).unwrap_or_default();
    let first = changes.first()?;
    match act {
        BookAct::Put(record) => first.was.is_some().then(|| Done::Changed(record.name())),
        BookAct::Archive(key, true) => Some(Done::Archived(name(key))),
        BookAct::Archive(key, false) => Some(Done::TakenOut(name(key))),
        BookAct::Remove(key) => Some(Done::Removed(name(key))),
        BookAct::Import { .. } => Some(Done::Imported(changes.len())),
        // Of what is typed nothing is said.
        BookAct::Write { .. } | BookAct::Undo | BookAct::Hush | BookAct::Again => None,
    }
}
