package rainward.daemon.board.form;

import static rainward.daemon.board.form.Kinds.Key.amount;
import static rainward.daemon.board.form.Kinds.Key.lines;
import static rainward.daemon.board.form.Kinds.Key.oneOf;
import static rainward.daemon.board.form.Kinds.Key.rows;
import static rainward.daemon.board.form.Kinds.Key.words;

import java.util.List;
import rainward.daemon.board.form.Kinds.Kind;

/** What goes on the ground: seed, lime, fertilizer, and what carries them. */
final class YardKinds {

    private static final String DOLLARS = "US dollars a lb, with metric units a kg";

    private YardKinds() {}

    static List<Kind> all() {
        return List.of(mix(), seeder(), spreader(), shed(), seed(), product(), lime(), advice());
    }

    private static Kind mix() {
        return new Kind(
                "mix",
                "Mixes of our own",
                "mix",
                "name",
                List.of(
                        words(
                                "name",
                                "Name",
                                "the name of a shared mix: this one stands in for it"),
                        amount("depth", "Sown at", "for instance 0.5 in"),
                        amount(
                                "stand_target",
                                "Share of live seed that must make plants",
                                "for instance 35%"),
                        words("season.first_sowing", "Sown from", "month-day, 07-05"),
                        words("season.last_sowing", "Sown until", "month-day, 08-15"),
                        words(
                                "season.full_worth_until",
                                "Worth everything if up by",
                                "month-day, 08-05"),
                        words(
                                "season.last_emergence",
                                "Worth anything if up by",
                                "month-day, 08-31"),
                        amount("season.full_worth", "Worth against the best mix", "left open: 1"),
                        amount(
                                "season.late_worth",
                                "Share of it on the last day",
                                "left open: 0.3"),
                        rows("component", "What is in it", "pure live seed, for instance 1.5 lb/ac")
                                .with(
                                        oneOf("species", "Seed", "").from(Choices.SPECIES),
                                        amount("drilled", "Drilled", ""),
                                        amount("broadcast", "Broadcast", ""),
                                        amount("stand_weight", "Share in the stand's worth", ""))));
    }

    private static Kind seeder() {
        return new Kind(
                "seeder",
                "Seed boxes",
                "seeder",
                "machine",
                List.of(
                        oneOf("machine", "Seeder", "a machine that seeds").from(Choices.MACHINES),
                        amount(
                                "heel",
                                "Share of a full load that must stay in",
                                "0% to 50%; left open: 8%"),
                        lines("box", "Boxes from left to right", "level full, as 6 ft and 2.5 bu")
                                .with(
                                        amount("width", "feeds a width of", ""),
                                        amount("holds", "holds", ""))));
    }

    private static Kind spreader() {
        return new Kind(
                "spreader",
                "Spreaders",
                "spreader",
                "machine",
                List.of(
                        oneOf("machine", "Spreader", "a machine that spreads")
                                .from(Choices.MACHINES),
                        amount("load", "A full load", "for instance 9000 lb")));
    }

    private static Kind shed() {
        return new Kind(
                "shed",
                "The shed",
                "the shed",
                "",
                List.of(
                        amount("bag", "Bag of seed", "left open: 50 lb"),
                        words("delivery", "Delivery takes", "left open: 5 d")));
    }

    private static Kind seed() {
        return new Kind(
                "seed",
                "Bags that weigh something else",
                "kind of seed",
                "species",
                List.of(
                        oneOf("species", "Seed", "").from(Choices.SPECIES),
                        amount("bag", "Its bag", "for instance 25 lb")));
    }

    private static Kind product() {
        return new Kind(
                "product",
                "Fertilizers that can be had",
                "fertilizer",
                "name",
                List.of(
                        words("name", "Name", "as on the bag"),
                        amount("price", "Price", DOLLARS),
                        words(
                                "grade",
                                "Grade",
                                "N-P2O5-K2O of its label, for instance 21-0-0; left open: the"
                                        + " usual one of this name")));
    }

    private static Kind lime() {
        return new Kind(
                "lime",
                "Limes, the first is spread",
                "lime",
                "name",
                List.of(
                        words("name", "Name", "as the dealer says it"),
                        amount("cce", "Calcium carbonate equivalent", "10% to 180%"),
                        amount("moisture", "Moisture", "0% to 50%; left open: none"),
                        lines("passes", "What passes which sieve", "as 60 and 70%")
                                .with(amount("mesh", "mesh", ""), amount("share", "share", "")),
                        amount("price", "Price, spread on the field", DOLLARS)));
    }

    private static Kind advice() {
        return new Kind(
                "advice",
                "Whose advice holds for lime and fertilizer",
                "the advice",
                "",
                List.of(
                        oneOf("lime", "Lime by", "left open: tri-state 1995")
                                .from(Choices.LIME_RULES),
                        oneOf("fineness", "Sieves of lime by", "left open: new york")
                                .from(Choices.FINENESS),
                        amount("target_ph", "pH that is aimed at", "5 to 7.5; left open: 6.5"),
                        lines("mix_ph", "pH that a mix wants", "5 to 7.5")
                                .with(words("mix", "mix", ""), amount("ph", "pH", "")),
                        amount(
                                "lime_most",
                                "Lime at a time at most",
                                "left open: 4000 lb/ac; the rest is owed"),
                        amount("lime_every_years", "Years between two doses", "1 to 10"),
                        amount("lime_depth", "Lime is worked in to", "left open: 6 in"),
                        words("fertilizer", "Fertilizer by", "left open: tri-state 1995"),
                        words("crops", "Kind of crop there", "left open: wheat and legumes"),
                        amount("nitrogen", "Nitrogen", "left open: 50 lb/ac"),
                        amount("may_miss", "May miss a target by", "left open: 10%"),
                        amount("may_exceed", "May exceed a target by", "left open: 25%"),
                        amount(
                                "soil_test_years",
                                "Years that a soil test is good for",
                                "left open: 3")));
    }
}
