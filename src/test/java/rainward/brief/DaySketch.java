package rainward.brief;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import rainward.brief.making.BriefInput;
import rainward.brief.making.BriefMaker;
import rainward.cycle.Outlook;
import rainward.cycle.Outlook.FieldOutlook;
import rainward.cycle.Outlook.Seedbed;
import rainward.cycle.RainPicture;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.Operation;
import rainward.farm.StageRecord;
import rainward.farm.Window;
import rainward.queue.problem.Plan;
import rainward.queue.problem.PlanItem;
import rainward.readiness.Readiness;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.ForecastSeries;
import rainward.weather.trace.TraceBasis;
import rainward.window.StormWindow;

/** A day drawn by hand: says only what is not as usual. Usual is a dry, mild day without work. */
public final class DaySketch {

    public final LocalDate day;
    public final Map<String, FieldOutlook> fields = new LinkedHashMap<>();
    public final Map<String, RainPicture> rain = new TreeMap<>();
    public final Map<String, HourlyAir> air = new TreeMap<>();
    public final List<PlanItem> items = new ArrayList<>();
    public final List<Plan.LeftOut> leftOut = new ArrayList<>();
    public final List<StormWindow> windows = new ArrayList<>();
    public final List<LocalAlert> alerts = new ArrayList<>();
    public final List<String> warnings = new ArrayList<>();
    UnaryOperator<BriefInput.Books> books = usual -> usual;
    public Optional<BriefInput.LastBrief> last = Optional.empty();
    public Duration forecastAge = Duration.ofHours(2);
    public Duration writtenAfter = Duration.ofMinutes(1);
    public boolean forecast = true;

    public DaySketch(LocalDate day) {
        this.day = day;
        SampleCrew.FIELDS.forEach(f -> put(f, FieldState.PENDING, List.of()));
        SampleCrew.PROPERTIES.forEach(p -> {
            dryFor(p.name());
            air(p.name(), 27, 15, 2.5);
        });
    }

    public Instant at(int dayOffset, String time) {
        return day.plusDays(dayOffset)
                .atTime(LocalTime.parse(time))
                .atZone(SampleCrew.DETROIT)
                .toInstant();
    }

    public Window span(int dayOffset, String from, String to) {
        return new Window(at(dayOffset, from), at(dayOffset, to));
    }

    public Instant dueAt() {
        return at(0, "05:00");
    }

    public Field field(String name) {
        return fields.values().stream()
                .map(f -> f.item().field())
                .filter(f -> f.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    public DaySketch put(Field field, FieldState state, List<StageRecord> stages) {
        var status = new FieldStatus(state, stages, Optional.empty(), Optional.empty(), false);
        fields.put(
                field.name(),
                new FieldOutlook(
                        new FieldCase(field, status),
                        readiness(field.name(), List.of(), "Dry seedbed, rain on its way."),
                        List.of(),
                        Optional.of(bed(Seedbed.Wetness.DRY, 26, Optional.of(dueAt())))));
        return this;
    }

    public DaySketch state(FieldState state, String... names) {
        Arrays.stream(names).forEach(name -> put(field(name), state, List.of()));
        return this;
    }

    public Seedbed bed(Seedbed.Wetness wetness, double tempC, Optional<Instant> workableFrom) {
        return new Seedbed(0.12, tempC, wetness, workableFrom);
    }

    private static Readiness readiness(String field, List<Readiness.Gate> gates, String reason) {
        return new Readiness(
                field,
                60,
                new Readiness.Chances(SampleCrew.WANTED, 0.6, 0.7, Optional.empty()),
                new Readiness.Parts(60, 40, 80),
                gates,
                new Readiness.Why("", reason.replaceAll("\\.$", "")),
                Optional.empty());
    }

    public DaySketch reason(String field, String reason) {
        return readiness(field, readiness(field, List.of(), reason));
    }

    public DaySketch gate(String field, Readiness.Gate.Kind kind, String words) {
        return readiness(field, readiness(field, List.of(new Readiness.Gate(kind, words)), words));
    }

    private DaySketch readiness(String field, Readiness readiness) {
        fields.computeIfPresent(
                field, (name, f) -> new FieldOutlook(f.item(), readiness, f.stands(), f.seedbed()));
        return this;
    }

    public DaySketch seedbed(String field, Seedbed bed) {
        fields.computeIfPresent(
                field,
                (name, f) ->
                        new FieldOutlook(f.item(), f.readiness(), f.stands(), Optional.of(bed)));
        return this;
    }

    /** A stage of work that is not seeding. */
    public DaySketch work(int rank, String field, Operation operation, String hands, Window when) {
        String[] who = hands.split("/");
        items.add(new PlanItem(
                rank,
                new PlanItem.Place(
                        field,
                        field(field).property(),
                        operation.name().toLowerCase(java.util.Locale.ROOT),
                        operation),
                new PlanItem.Hands(who[0], who[1]),
                when,
                0.4,
                Optional.empty()));
        return this;
    }

    public DaySketch seed(int rank, String field, double chance, Window when) {
        return seed(rank, field, SampleCrew.WANTED, chance, when);
    }

    public DaySketch seed(int rank, String field, String mix, double chance, Window when) {
        items.add(new PlanItem(
                rank,
                new PlanItem.Place(field, field(field).property(), "seed", Operation.SEED),
                new PlanItem.Hands("seeder", "Cleo"),
                when,
                0.25,
                Optional.of(new PlanItem.Sowing(mix, chance, chance))));
        return this;
    }

    public DaySketch leaveOut(String field, String why) {
        leftOut.add(new Plan.LeftOut(field, why));
        return this;
    }

    public DaySketch dryFor(String property) {
        return rain(property, new double[28]);
    }

    /** Chance of rain by six hours from two in the morning on; the amount follows from it. */
    public DaySketch rain(String property, double... chances) {
        List<RainPicture.Bar> bars = new ArrayList<>();
        Instant from = at(0, "02:00");
        for (double chance : chances) {
            Instant to = from.plus(Duration.ofHours(6));
            double meanMm = 14 * chance * chance;
            bars.add(new RainPicture.Bar(
                    new Window(from, to), chance, meanMm, 2.6 * meanMm, chance * chance * 0.2));
            from = to;
        }
        rain.put(property, new RainPicture(bars, TraceBasis.PLAIN));
        return this;
    }

    /** Air that rises from a low to a high in the afternoon, for two days. */
    public DaySketch air(String property, double highC, double dewPointC, double windMps) {
        int hours = 48;
        double[] tempC = new double[hours];
        double[] dewC = new double[hours];
        double[] wind = new double[hours];
        for (int h = 0; h < hours; h++) {
            double swing = Math.cos((h - 15) * Math.PI / 12);
            tempC[h] = highC - 8 + 8 * swing;
            dewC[h] = Math.min(dewPointC, tempC[h]);
            wind[h] = windMps * (1 + 0.5 * swing);
        }
        air.put(property, new HourlyAir(at(0, "00:00"), tempC, dewC, wind, new double[hours]));
        return this;
    }

    public Plan plan() {
        return new Plan(dueAt(), items, leftOut, new Plan.Value(10, 0, 0.2, 0, 0));
    }

    public BriefInput.LastBrief asLast() {
        return new BriefInput.LastBrief(plan(), rain);
    }

    private Outlook outlook() {
        Map<String, ForecastSeries.Stamp> stamps = new TreeMap<>();
        if (forecast) {
            Instant issued = dueAt().plus(writtenAfter).minus(forecastAge);
            rain.keySet()
                    .forEach(p -> stamps.put(
                            p, new ForecastSeries.Stamp("nws", issued, issued.plusSeconds(600))));
        }
        return new Outlook(
                dueAt().plus(writtenAfter),
                stamps,
                List.copyOf(fields.values()),
                forecast ? rain : Map.of(),
                Map.of(),
                plan(),
                windows);
    }

    public DaySketch writtenAfter(Duration wait) {
        writtenAfter = wait;
        return this;
    }

    public BriefInput input() {
        return new BriefInput(
                outlook(),
                SampleCrew.roster(),
                new BriefInput.Occasion(SampleCrew.FARM, dueAt(), dueAt().plus(writtenAfter)),
                last,
                new BriefInput.Skies(
                        forecast ? air : Map.of(),
                        alerts,
                        Map.of("nws", "Forecast: US National Weather Service, public domain."),
                        warnings),
                books.apply(BriefInput.Books.EMPTY));
    }

    public Brief brief() {
        return BriefMaker.make(input());
    }
}
