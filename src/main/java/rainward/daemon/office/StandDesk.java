package rainward.daemon.office;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.cycle.Hindsight;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.Mix;
import rainward.farm.Property;
import rainward.farm.Recipe;
import rainward.stand.StandOutlook;
import rainward.weather.past.PastWeather;

/** Where seeded fields are looked back on. */
public final class StandDesk {

    private final Office office;
    private final PastDesk past;

    public StandDesk(Office office) {
        this.office = office;
        this.past = new PastDesk(office);
    }

    /** What became of a seeding. */
    public enum Came {
        UP,
        FAILED,
        WAITING
    }

    /**
     * A look at a seeded field.
     *
     * @param field its name
     * @param came what became of it
     * @param words for the person
     */
    public record Look(String field, Came came, String words) {}

    /** What the model says of every seeded field under the weather that came. */
    public List<Look> lookAtAll() {
        Instant now = office.now();
        List<Look> looks = new ArrayList<>();
        List<FieldCase> seeded = office.store().read(books -> books.cases()).stream()
                .filter(item -> item.status().state() == FieldState.SEEDED)
                .toList();
        for (Property property : office.roster().properties().values()) {
            PastWeather weather = office.store().read(books -> past.of(books, property, now));
            seeded.stream()
                    .filter(item -> item.field().property().equals(property.name()))
                    .forEach(item -> look(item, weather).ifPresent(looks::add));
        }
        return looks;
    }

    private Optional<Look> look(FieldCase item, PastWeather weather) {
        Optional<Recipe> recipe = office.roster().recipeOf(item.field());
        Optional<Mix> mix = Optional.ofNullable(office.mixes().get(item.mix()));
        Optional<Instant> seededAt = item.status().seededAt();
        if (recipe.isEmpty() || mix.isEmpty() || seededAt.isEmpty()) {
            return Optional.empty();
        }
        return Hindsight.of(
                        new Hindsight.Seeding(item, recipe.get(), mix.get(), seededAt.get()),
                        weather.weather(),
                        office.zone())
                .map(outlook -> told(item, outlook, daysSince(seededAt.get())));
    }

    private double daysSince(Instant at) {
        return Duration.between(at, office.now()).toHours() / 24.0;
    }

    /** A stand that the model expects only after today is none yet. */
    private static Look told(FieldCase item, StandOutlook outlook, double daysSince) {
        StandOutlook.Losses losses = outlook.losses().get(0);
        String field = item.field().name();
        double upAfterDays = outlook.emergence().get(0).p50Days();
        boolean expected = outlook.chance()[0] > 0.5;
        if (expected && upAfterDays <= daysSince) {
            return new Look(
                    field, Came.UP, "a stand, " + Math.round(upAfterDays) + " days after seeding");
        }
        if (expected || losses.stillDryFraction() > 0.3) {
            return new Look(field, Came.WAITING, "nothing to see yet");
        }
        return new Look(field, Came.FAILED, "failed: " + cause(losses));
    }

    private static String cause(StandOutlook.Losses losses) {
        if (losses.washOutFraction() > losses.falseStartFraction()
                && losses.washOutFraction() > losses.heatFraction()) {
            return "washed out";
        }
        return losses.heatFraction() > losses.falseStartFraction()
                ? "killed by heat"
                : "started, then dried out";
    }
}
