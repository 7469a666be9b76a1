package rainward.brief.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.awt.image.BufferedImage;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.brief.RainPanel;
import rainward.brief.SampleCrew;
import rainward.cycle.RainPicture.Bar;
import rainward.farm.Operation;
import rainward.farm.UnitSystem;
import rainward.farm.Window;

/** The rain picture, read dot by dot. */
class RainChartTest {

    private static final Instant START = Instant.parse("2026-07-16T06:00:00Z");

    /** Four bars over one day; dots of the image are half a unit. */
    private static RainPanel panel(double chance, double meanMm, List<RainPanel.Work> work) {
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Instant from = START.plus(Duration.ofHours(6L * i));
            bars.add(new Bar(
                    new Window(from, from.plus(Duration.ofHours(6))),
                    i == 2 ? chance : 0,
                    i == 2 ? meanMm : 0,
                    i == 2 ? 1.5 * meanMm : 0,
                    0));
        }
        return new RainPanel("Mill Pond", bars, work);
    }

    private static BufferedImage draw(RainPanel panel) {
        return RainChart.draw(panel, SampleCrew.DETROIT, UnitSystem.US_CUSTOMARY, Letters.kept());
    }

    /** How many dots of exactly this ink lie in a column. */
    private static long dots(BufferedImage image, int x, Ink ink) {
        return IntStream.range(0, image.getHeight())
                .filter(y -> (image.getRGB(x, y) & 0xFFFFFF) == (ink.color().getRGB() & 0xFFFFFF))
                .count();
    }

    /** Quarter, middle and end of the third bar are free of the whisker and the name. */
    private static int inThirdBar() {
        double left = 34;
        double right = RainChart.WIDTH - 6.0;
        return (int) Math.round(2 * (left + (right - left) * (2.25 / 4)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.25, 0.5, 0.75, 1.0})
    void theBarIsAsHighAsTheChance(double chance) {
        long full = dots(draw(panel(1.0, 0, List.of())), inThirdBar(), Ink.CHANCE);

        long dots = dots(draw(panel(chance, 0, List.of())), inThirdBar(), Ink.CHANCE);

        assertThat(full).isBetween(100L, 108L);
        assertThat((double) dots / full)
                .isCloseTo(chance, org.assertj.core.api.Assertions.within(0.03));
    }

    @Test
    void twiceTheRainIsABarTwiceAsHigh() {
        long small = dots(draw(panel(1, 6, List.of())), inThirdBar(), Ink.AMOUNT);
        long large = dots(draw(panel(1, 12, List.of())), inThirdBar(), Ink.AMOUNT);

        assertThat(large).isBetween(2 * small - 2, 2 * small + 2);
        assertThat(small).isPositive();
    }

    /** A bar before the best one is as good as bare of letters: the name stands over its own. */
    @Test
    void theNameOfTheBestChanceLeavesTheBarsBesideItBare() {
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            Instant from = START.plus(Duration.ofHours(6L * i));
            double chance = i == 8 ? 0.4 : i == 7 ? 0.38 : 0;
            bars.add(new Bar(new Window(from, from.plus(Duration.ofHours(6))), chance, 0, 0, 0));
        }
        BufferedImage named = draw(new RainPanel("Mill Pond", bars, List.of()));

        double width = (RainChart.WIDTH - 6.0 - 34) / 16;
        int inBarBefore = (int) Math.round(2 * (34 + 7.4 * width));
        assertThat(dots(named, inBarBefore, Ink.CHANCE)).isBetween(36L, 42L);
        assertThat(IntStream.range(2 * 53, 2 * 71)
                        .mapToObj(y -> named.getRGB(inBarBefore, y) & 0xFFFFFF)
                        .distinct()
                        .count())
                .isEqualTo(1);
    }

    @Test
    void seedingIsSolidAndOtherWorkIsStripedAtItsHours() {
        Window hours =
                new Window(START.plus(Duration.ofHours(12)), START.plus(Duration.ofHours(15)));
        long bare = dots(draw(panel(0, 0, List.of())), inThirdBar(), Ink.SEED);

        long seed = dots(
                draw(panel(0, 0, List.of(new RainPanel.Work(hours, Operation.SEED)))),
                inThirdBar(),
                Ink.SEED);
        long till = dots(
                draw(panel(0, 0, List.of(new RainPanel.Work(hours, Operation.TILL)))),
                inThirdBar(),
                Ink.SEED);

        assertThat(seed - bare).isBetween(24L, 28L);
        assertThat(till).isLessThanOrEqualTo(bare);
        assertThat(dots(
                        draw(panel(0, 0, List.of(new RainPanel.Work(hours, Operation.TILL)))),
                        inThirdBar(),
                        Ink.OTHER_WORK))
                .isPositive();
    }

    /** WCAG 2.1, 1.4.11: 3 to 1 for what has to be seen; it holds without any hue. */
    @ParameterizedTest
    @EnumSource(names = {"LINE", "CHANCE", "AMOUNT", "SEED", "OTHER_WORK"})
    void whatHasToBeSeenStandsOutFromThePaperInGrey(Ink ink) {
        assertThat((1.0 + 0.05) / (luminance(ink) + 0.05)).isGreaterThanOrEqualTo(3.0);
    }

    private static double luminance(Ink ink) {
        float[] parts = ink.color().getRGBColorComponents(null);
        return 0.2126 * linear(parts[0]) + 0.7152 * linear(parts[1]) + 0.0722 * linear(parts[2]);
    }

    private static double linear(double share) {
        return share <= 0.03928 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }

    @Test
    void aDayOf25HoursIsDrawn() {
        Instant from = Instant.parse("2026-11-01T04:00:00Z");
        List<Bar> bars = IntStream.range(0, 8)
                .mapToObj(i -> new Bar(
                        new Window(
                                from.plus(Duration.ofHours(6L * i)),
                                from.plus(Duration.ofHours(6L * i + 6))),
                        0.5,
                        2,
                        4,
                        0))
                .toList();

        BufferedImage image = draw(new RainPanel("Mill Pond", bars, List.of()));

        assertThat(image.getWidth()).isEqualTo(2 * RainChart.WIDTH);
        assertThat(dots(image, 2 * 150, Ink.CHANCE)).isBetween(48L, 56L);
    }

    @Test
    void aPanelWithoutBarsIsABugOfTheCaller() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> draw(new RainPanel("Mill Pond", List.of(), List.of())))
                .withMessageContaining("Mill Pond");
    }
}
