package rainward.weather.rain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rainward.farm.Window;

/** Rain shared out to hours and days keeps its sum, on days of 23 and 25 hours too. */
class RainSharesTest {

    static final ZoneId FARM = ZoneId.of("America/Detroit");
    static final Instant START = Instant.parse("2026-03-07T00:00:00Z");

    @Test
    void sixHoursShareTheirTotalEvenly() {
        var six = amount(START, 6, 12);
        assertThat(RainShares.hourlyMm(List.of(six), START, 7))
                .containsExactly(2, 2, 2, 2, 2, 2, 0);
    }

    @Test
    void anIntervalThatBeganBeforeGivesOnlyItsRest() {
        var six = amount(START, 6, 12);
        assertThat(RainShares.hourlyMm(List.of(six), START.plus(Duration.ofHours(4)), 3))
                .containsExactly(2, 2, 0);
    }

    @Test
    void hoursAddUpToTheIntervals() {
        var sky = new SplittableRandom(20260715);
        for (int round = 0; round < 500; round++) {
            List<RainAmount> amounts = random(sky);
            double hourly = 0;
            for (double mm : RainShares.hourlyMm(amounts, START, 400)) {
                hourly += mm;
            }
            assertThat(hourly).isCloseTo(total(amounts), within(1e-9));
        }
    }

    @Test
    void daysAddUpToTheIntervalsOverBothClockChanges() {
        var sky = new SplittableRandom(20261101);
        for (LocalDate first : List.of(LocalDate.of(2026, 3, 6), LocalDate.of(2026, 10, 30))) {
            Instant start = first.atStartOfDay(FARM).toInstant();
            List<RainAmount> amounts = shifted(random(sky), Duration.between(START, start));
            double daily = 0;
            for (int d = 0; d < 20; d++) {
                daily += RainShares.dayTotal(amounts, first.plusDays(d), FARM).amountMm();
            }
            assertThat(daily).isCloseTo(total(amounts), within(1e-9));
        }
    }

    @Test
    void theShortDayHas23HoursOfAnEvenRainAndTheLongOne25() {
        Instant spring = LocalDate.of(2026, 3, 8).atStartOfDay(FARM).toInstant();
        Instant autumn = LocalDate.of(2026, 11, 1).atStartOfDay(FARM).toInstant();
        assertThat(RainShares.dayTotal(evenRain(spring, 26), LocalDate.of(2026, 3, 8), FARM))
                .isEqualTo(new RainShares.DayTotal(23, true));
        assertThat(RainShares.dayTotal(evenRain(autumn, 26), LocalDate.of(2026, 11, 1), FARM))
                .isEqualTo(new RainShares.DayTotal(25, true));
    }

    @Test
    void aDayWithAnUnknownHourIsNotComplete() {
        Instant autumn = LocalDate.of(2026, 11, 1).atStartOfDay(FARM).toInstant();
        assertThat(RainShares.dayTotal(evenRain(autumn, 24), LocalDate.of(2026, 11, 1), FARM))
                .isEqualTo(new RainShares.DayTotal(24, false));
    }

    private static List<RainAmount> evenRain(Instant start, int hours) {
        List<RainAmount> hourly = new ArrayList<>();
        for (int h = 0; h < hours; h++) {
            hourly.add(amount(start.plus(Duration.ofHours(h)), 1, 1));
        }
        return hourly;
    }

    private static List<RainAmount> random(SplittableRandom sky) {
        List<RainAmount> amounts = new ArrayList<>();
        Instant at = START;
        for (int i = 0; i < 20; i++) {
            int hours = new int[] {1, 2, 5, 6, 7, 12}[sky.nextInt(6)];
            amounts.add(amount(at, hours, sky.nextDouble(40)));
            at = at.plus(Duration.ofHours(hours + sky.nextInt(3)));
        }
        return amounts;
    }

    private static List<RainAmount> shifted(List<RainAmount> amounts, Duration by) {
        return amounts.stream()
                .map(a -> new RainAmount(
                        new Window(a.window().from().plus(by), a.window().to().plus(by)),
                        a.amountMm()))
                .toList();
    }

    private static double total(List<RainAmount> amounts) {
        return amounts.stream().mapToDouble(RainAmount::amountMm).sum();
    }

    private static RainAmount amount(Instant from, int hours, double mm) {
        return new RainAmount(new Window(from, from.plus(Duration.ofHours(hours))), mm);
    }
}
