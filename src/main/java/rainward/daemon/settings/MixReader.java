package rainward.daemon.settings;

import java.time.DateTimeException;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.farm.Mix;
import rainward.farm.MixComponent;
import rainward.farm.NearestName;
import rainward.farm.Quantity;
import rainward.farm.Season;
import rainward.farm.Species;

/**
 * Mixes of the farm's own; one that has the name of a shared mix stands in for it.
 *
 * @param species by name
 */
record MixReader(Map<String, Species> species) {

    private static final Bounds.Amount SEED_RATE = Bounds.Amount.given(Quantity.RATE, 0.1, 400);

    List<Mix> mixes(Section root) {
        List<Section> sections = root.tables("mix");
        List<Mix> mixes = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (Section section : sections) {
            String name = section.name("name");
            names.add(name);
            mix(section, name).ifPresent(mixes::add);
            section.end();
        }
        WorkReader.once(sections, names);
        return mixes;
    }

    private Optional<Mix> mix(Section section, String name) {
        double depthCm = section.amount("depth", Bounds.Amount.given(Quantity.DEPTH, 0.2, 10));
        double target = section.share("stand_target", new Bounds.Real(Optional.empty(), 0.01, 1));
        Optional<Season> season = season(section.table("season"));
        List<Section> entries = section.tables("component");
        if (entries.isEmpty()) {
            section.wrong("component", "name at least one kind of seed under [[mix.component]]");
        }
        List<MixComponent> components =
                entries.stream().map(this::component).flatMap(Optional::stream).toList();
        return components.isEmpty()
                ? Optional.empty()
                : season.map(dates -> new Mix(name, components, depthCm, target, dates));
    }

    private Optional<MixComponent> component(Section section) {
        String name = section.name("species");
        if (!name.equals(Section.NAMELESS) && !species.containsKey(name)) {
            section.wrong(
                    "species",
                    "there is no such species, "
                            + NearestName.of(name, species.keySet())
                                    .map(near -> "the nearest is \"" + near + "\"")
                                    .orElse("known are "
                                            + String.join(
                                                    ", ",
                                                    species.keySet().stream()
                                                            .sorted()
                                                            .toList())));
        }
        double drilledKgPerHa = section.amount("drilled", SEED_RATE);
        double broadcastKgPerHa = section.amount("broadcast", SEED_RATE);
        double weight = section.share("stand_weight", Bounds.Real.usually(1, 0.01, 1));
        section.end();
        return Optional.ofNullable(species.get(name))
                .map(kind -> new MixComponent(kind, drilledKgPerHa, broadcastKgPerHa, weight));
    }

    private static Optional<Season> season(Section section) {
        Optional<MonthDay> firstSowing = day(section, "first_sowing");
        Optional<MonthDay> lastSowing = day(section, "last_sowing");
        Optional<MonthDay> fullUntil = day(section, "full_worth_until");
        Optional<MonthDay> lastUp = day(section, "last_emergence");
        double worth = section.share("full_worth", Bounds.Real.usually(1, 0.01, 1));
        double late = section.share("late_worth", Bounds.Real.usually(0.3, 0, 1));
        section.end();
        boolean inOrder = inOrder(section, firstSowing, lastSowing, "last_sowing")
                && inOrder(section, fullUntil, lastUp, "last_emergence");
        return inOrder
                ? Optional.of(new Season(
                        firstSowing.orElseThrow(),
                        lastSowing.orElseThrow(),
                        fullUntil.orElseThrow(),
                        lastUp.orElseThrow(),
                        worth,
                        late))
                : Optional.empty();
    }

    private static boolean inOrder(
            Section section, Optional<MonthDay> first, Optional<MonthDay> last, String key) {
        if (first.isEmpty() || last.isEmpty()) {
            return false;
        }
        if (last.get().isBefore(first.get())) {
            section.wrong(key, "must not come before " + first.get().toString().substring(2));
            return false;
        }
        return true;
    }

    private static Optional<MonthDay> day(Section section, String key) {
        String remedy = "must be a day of the year, month first: \"07-31\"";
        String text = section.text(key, remedy);
        try {
            return Optional.of(MonthDay.parse("--" + text));
        } catch (DateTimeException e) {
            if (!text.equals(Section.NAMELESS)) {
                section.wrong(key, remedy);
            }
            return Optional.empty();
        }
    }
}
