package rainward.input.spread;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import rainward.farm.Require;
import rainward.input.SoilTest;
import rainward.input.fertilizer.CropRemoval;

/**
 * A field whose lime and fertilizer are asked for.
 *
 * @param plot which ground
 * @param test the newest soil test, if there is one
 * @param past what the books tell of it
 * @param today day of the question
 */
public record SpreadCase(Plot plot, Optional<SoilTest> test, Past past, LocalDate today) {

    /**
     * Which ground.
     *
     * @param field its name
     * @param areaHa to be spread [ha]
     * @param targetPh that its mix asks for
     */
    public record Plot(String field, double areaHa, double targetPh) {
        public Plot {
            Require.named("field", field);
            Require.positive("areaHa", areaHa);
            Require.inRange("targetPh", targetPh, 4, 8);
        }
    }

    /**
     * What the books tell.
     *
     * @param spread on it, whenever
     * @param harvests carried off it, whenever
     */
    public record Past(List<Spreading> spread, List<CropRemoval.Harvest> harvests) {
        public static final Past NOTHING = new Past(List.of(), List.of());

        public Past {
            spread = List.copyOf(spread);
            harvests = List.copyOf(harvests);
        }
    }

    /**
     * A product that was spread.
     *
     * @param on day
     * @param product its name
     * @param rateKgPerHa over the entire field [kg/ha]
     */
    public record Spreading(LocalDate on, String product, double rateKgPerHa) {
        public Spreading {
            Require.notNegative("rateKgPerHa", rateKgPerHa);
        }
    }

    /** What was spread after the soil was sampled; all of it where it never was. */
    List<Spreading> sinceTest() {
        return past.spread().stream()
                .filter(s -> test.map(t -> s.on().isAfter(t.sampledOn())).orElse(true))
                .toList();
    }
}
