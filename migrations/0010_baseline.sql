-- How the person usually is, so that someone who has never met her can tell a change from the usual. One row for each
-- person, made at the first save.
create table baseline (
    id               integer primary key,
    person_id        integer not null unique references person (id),
    own_words        text,           -- as the person says it
    own_words_by     text,           -- who wrote them down, if not the person
    thinking         text,
    mood             text,
    not_usual        text,           -- what it looks like when it is not the usual self
    voice            text,           -- how to be with the person: voice, light, touch, names
    light            text,
    touch            text,
    names            text,
    walking_aid      text,
    -- The six of Katz, JAMA 1963;185:914-919: how each is done, and a line in own words. No score is kept.
    bathing            text not null constraint baseline_bathing check (bathing in ('alone', 'with help', 'done by someone', 'not asked')),
    bathing_words      text,
    dressing           text not null constraint baseline_dressing check (dressing in ('alone', 'with help', 'done by someone', 'not asked')),
    dressing_words     text,
    toileting          text not null constraint baseline_toileting check (toileting in ('alone', 'with help', 'done by someone', 'not asked')),
    toileting_words    text,
    transferring       text not null constraint baseline_transferring check (transferring in ('alone', 'with help', 'done by someone', 'not asked')),
    transferring_words text,
    continence         text not null constraint baseline_continence check (continence in ('alone', 'with help', 'done by someone', 'not asked')),
    continence_words   text,
    feeding            text not null constraint baseline_feeding check (feeding in ('alone', 'with help', 'done by someone', 'not asked')),
    feeding_words      text,
    said_by          text,
    said_on          text,
    checked_at       text,
    checked_by       integer references member (id),
    checked_against  text,
    version          integer not null default 1
) strict;
