package rainward.window;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import rainward.farm.Crew;
import rainward.farm.GeoPoint;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;

/** Finds stretches that end with useful rain. */
public final class WindowDetector {

    /** Rain this unlikely is no window, not even a closing one. */
    private static final double LEAST_CHANCE = 0.05;

    private static final Duration SAME_RAIN = Duration.ofHours(6);

    private final WindowRules.Watch watch;
    private final Instant now;

    private WindowDetector(WindowRules.Watch watch, Instant now) {
        this.watch = watch;
        this.now = now;
    }

    /**
     * Looks at every property for the first useful rain within the lead time, merges neighbours and
     * says what fits before it by the plan.
     *
     * @param properties that have pending fields
     * @param plan the order
     * @param crew whose shifts count
     * @param watch what counts as a window
     * @param now the moment of looking
     * @return candidates, also unlikely ones, in order of arrival; ids hold only until they open
     */
    public static List<StormWindow> detect(
            List<PropertyWatch> properties,
            Plan plan,
            Crew crew,
            WindowRules.Watch watch,
            Instant now) {
        WindowDetector detector = new WindowDetector(watch, now);
        List<Rain> rains = new ArrayList<>();
        properties.stream()
                .filter(p -> !p.pending().isEmpty())
                .sorted(Comparator.comparing(p -> p.property().name()))
                .forEach(p -> detector.rain(p).ifPresent(rains::add));
        rains.sort(Comparator.comparing(Rain::middle).thenComparing(r -> r.names.get(0)));
        return detector.merged(rains).stream()
                .map(r -> detector.window(r, plan, crew))
                .toList();
    }

    /** What the traces of one or more properties say about the first useful rain. */
    private record Rain(
            List<String> names,
            List<GeoPoint> places,
            List<String> fields,
            long[] arrivalS,
            double[] amountMm,
            Shares shares) {

        Instant middle() {
            return Instant.ofEpochSecond(arrivalS[arrivalS.length / 2]);
        }

        Instant at(double share) {
            return Instant.ofEpochSecond(
                    arrivalS[(int) Math.min(arrivalS.length - 1, share * arrivalS.length)]);
        }

        double amount(double share) {
            return amountMm[(int) Math.min(amountMm.length - 1, share * amountMm.length)];
        }
    }

    /** Traces looked at, those with useful rain and those with hard rain. */
    private record Shares(int traces, int wet, int hard) {

        Shares plus(Shares other) {
            return new Shares(traces + other.traces, wet + other.wet, hard + other.hard);
        }
    }

    private Optional<Rain> rain(PropertyWatch property) {
        int from = property.traces().hourOf(now);
        int end = property.traces().hourOf(now.plus(watch.lead()));
        UsefulRain.Range range = new UsefulRain.Range(from, end);
        List<UsefulRain.Spell> spells = new ArrayList<>();
        int count = property.traces().count();
        for (int t = 0; t < count; t++) {
            UsefulRain.first(property.traces(), t, range, property.usefulMm())
                    .ifPresent(spells::add);
        }
        if (spells.isEmpty() || spells.size() < LEAST_CHANCE * count) {
            return Optional.empty();
        }
        int hard = (int) spells.stream()
                .filter(s -> s.peakMmPerH() >= watch.hardRainMmPerH())
                .count();
        return Optional.of(new Rain(
                List.of(property.property().name()),
                List.of(property.property().place()),
                property.pending().stream().map(p -> p.field().name()).toList(),
                spells.stream()
                        .mapToLong(s -> property.traces().timeOf(s.hour()).getEpochSecond())
                        .sorted()
                        .toArray(),
                spells.stream().mapToDouble(UsefulRain.Spell::rainMm).sorted().toArray(),
                new Shares(count, spells.size(), hard)));
    }

    private List<Rain> merged(List<Rain> rains) {
        List<Rain> all = new ArrayList<>();
        for (Rain rain : rains) {
            int with = -1;
            for (int i = 0; i < all.size() && with < 0; i++) {
                with = neighbours(all.get(i), rain) ? i : -1;
            }
            if (with < 0) {
                all.add(rain);
            } else {
                all.set(with, merge(all.get(with), rain));
            }
        }
        return all;
    }

    private boolean neighbours(Rain a, Rain b) {
        Duration apart = Duration.between(a.middle(), b.middle()).abs();
        boolean near = a.places.stream()
                .anyMatch(p ->
                        b.places.stream().anyMatch(q -> p.distanceKm(q) <= watch.neighbourKm()));
        return near && apart.compareTo(SAME_RAIN) <= 0;
    }

    private static Rain merge(Rain a, Rain b) {
        long[] arrivals = Arrays.copyOf(a.arrivalS, a.arrivalS.length + b.arrivalS.length);
        System.arraycopy(b.arrivalS, 0, arrivals, a.arrivalS.length, b.arrivalS.length);
        Arrays.sort(arrivals);
        double[] amounts = Arrays.copyOf(a.amountMm, a.amountMm.length + b.amountMm.length);
        System.arraycopy(b.amountMm, 0, amounts, a.amountMm.length, b.amountMm.length);
        Arrays.sort(amounts);
        return new Rain(
                joined(a.names, b.names),
                joined(a.places, b.places),
                joined(a.fields, b.fields),
                arrivals,
                amounts,
                a.shares.plus(b.shares));
    }

    private static <T> List<T> joined(List<T> a, List<T> b) {
        List<T> all = new ArrayList<>(a);
        all.addAll(b);
        return List.copyOf(all);
    }

    private StormWindow window(Rain rain, Plan plan, Crew crew) {
        StormWindow.Arrival arrival =
                new StormWindow.Arrival(rain.at(0.1), rain.at(0.5), rain.at(0.9));
        List<StormWindow.Fit> fits = fits(rain, arrival, plan, crew);
        List<String> fitting = fits.stream().map(StormWindow.Fit::field).toList();
        SortedSet<String> names = new TreeSet<>(rain.names);
        return new StormWindow(
                names.first() + " " + arrival.p50(),
                names,
                (double) rain.shares.wet / rain.shares.traces,
                arrival,
                new StormWindow.Amount(rain.amount(0.1), rain.amount(0.5), rain.amount(0.9)),
                (double) rain.shares.hard / rain.shares.traces,
                fits,
                rain.fields.stream().filter(f -> !fitting.contains(f)).sorted().toList());
    }

    /** Fields whose seeding ends, by the plan, before the early arrival. */
    private List<StormWindow.Fit> fits(
            Rain rain, StormWindow.Arrival arrival, Plan plan, Crew crew) {
        Map<String, Instant> done = new HashMap<>();
        Map<String, List<PlanItem>> seeding = new HashMap<>();
        for (PlanItem item : plan.items()) {
            if (item.sowing().isPresent() && rain.fields.contains(item.place().field())) {
                seeding.computeIfAbsent(item.place().field(), f -> new ArrayList<>())
                        .add(item);
            }
        }
        seeding.values().removeIf(i -> i.get(i.size() - 1).work().to().isAfter(arrival.p10()));
        seeding.keySet().forEach(f -> done.put(f, arrival.p10()));
        Map<String, Instant> last = new LastStarts(crew, plan).before(done);
        return seeding.entrySet().stream()
                .map(e -> fit(e.getKey(), e.getValue().get(0), last))
                .sorted(Comparator.comparing(StormWindow.Fit::plannedStart))
                .toList();
    }

    private static StormWindow.Fit fit(String field, PlanItem first, Map<String, Instant> last) {
        Instant planned = first.work().from();
        Instant safe = last.getOrDefault(field, planned);
        double chance = first.sowing().map(PlanItem.Sowing::chance).orElse(0.0);
        return new StormWindow.Fit(field, planned, safe.isBefore(planned) ? planned : safe, chance);
    }
}
