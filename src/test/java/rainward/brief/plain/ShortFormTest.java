package rainward.brief.plain;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.brief.AlertDays;
import rainward.brief.BriefDays;
import rainward.brief.DaySketch;
import rainward.brief.SampleCrew;
import rainward.farm.Operation;
import rainward.farm.UnitSystem;

/** One text message: 160 characters of the basic set of GSM 7 bit (3GPP TS 23.038, from memory). */
class ShortFormTest {

    /** Table of the basic set, without escape, line feed and carriage return. */
    static final String BASIC_SET = "@£$¥èéùìòÇØøÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?"
            + "¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà";

    static Stream<String> days() {
        return BriefDays.all().keySet().stream();
    }

    private static void assertFitsOneMessage(String text) {
        assertThat(text).isNotBlank().hasSizeLessThanOrEqualTo(160);
        assertThat(text.chars()).allMatch(c -> BASIC_SET.indexOf(c) >= 0);
    }

    @ParameterizedTest
    @MethodSource("days")
    void everyBriefFitsOneMessage(String day) {
        for (UnitSystem units : UnitSystem.values()) {
            assertFitsOneMessage(ShortForm.of(BriefDays.day(day).brief(), units));
        }
    }

    @Test
    void everyAlertFitsOneMessage() {
        AlertDays.all()
                .values()
                .forEach(alert ->
                        assertFitsOneMessage(ShortForm.of(alert.get(), UnitSystem.US_CUSTOMARY)));
    }

    @Test
    void tellsTheOrderOfTheDay() {
        assertThat(ShortForm.of(BriefDays.dryStormInThreeDays().brief(), UnitSystem.US_CUSTOMARY))
                .isEqualTo("Thu: 1 Mill 3 6:30 am till, 2 Kettle 1 9:20 am till, "
                        + "3 Otter Flat 7:00 am spread. Rain: 74% Sat 2:00-8:00 pm at Mill Pond, "
                        + "the likeliest place.");
    }

    @Test
    void tellsWhenToStartBeforeTheRain() {
        assertThat(ShortForm.of(AlertDays.opened(), UnitSystem.US_CUSTOMARY))
                .isEqualTo("Rain 91% Sat 10:00 am-Sat 8:00 pm Mill Pond, Otter Creek. "
                        + "Start Otter Flat by Sat 5:20 am, Mill 5 by Sat 8:50 am");
    }

    @Test
    void changeThatLeavesNoTimeSaysSo() {
        assertThat(ShortForm.of(AlertDays.changed(), UnitSystem.US_CUSTOMARY))
                .isEqualTo("Changed: rain 96% Fri 6:00 pm-Sat 3:00 am Mill Pond, Otter Creek. "
                        + "No field fits before it");
    }

    @Test
    void closingSaysWhy() {
        assertThat(ShortForm.of(AlertDays.closed(), UnitSystem.US_CUSTOMARY))
                .isEqualTo("Storm window closed: Mill Pond, Otter Creek: the rain has come");
    }

    @Test
    void neverPointsToPagesThatItLacks() {
        assertThat(BriefDays.all().keySet())
                .allSatisfy(day -> assertThat(
                                ShortForm.of(BriefDays.day(day).brief(), UnitSystem.METRIC))
                        .doesNotContain("below"));
    }

    @Test
    void fieldsWithoutRoomAreCounted() {
        DaySketch day = new DaySketch(BriefDays.THURSDAY);
        SampleCrew.propertyNames().forEach(day::dryFor);
        int rank = 0;
        for (String field : List.of("Kettle 1", "Kettle 2", "Mill 3", "Mill 5", "Otter Flat")) {
            String hour = String.format(Locale.ROOT, "%02d:00", 7 + rank);
            day.work(++rank, field, Operation.TILL, "till tractor/Ana", day.span(0, hour, "14:30"));
        }

        String text = ShortForm.of(day.brief(), UnitSystem.US_CUSTOMARY);

        assertThat(text)
                .startsWith("Thu: 1 Kettle 1 7:00 am till, 2 Kettle 2 8:00 am till")
                .contains(" more. Rain: dry")
                .doesNotContain("..");
        assertFitsOneMessage(text);
    }

    @Test
    void lettersOutsideTheSetBecomeTheirNearest() {
        assertThat(ShortForm.fitted("Zoë’s [field] – Łąka ~ 50%\\ 日 🌧"))
                .isEqualTo("Zoe's (field) - ?aka - 50%/ ? ?");
    }

    @Test
    void whatIsTooLongEndsInTwoDots() {
        assertThat(ShortForm.fitted("x".repeat(200))).hasSize(160).endsWith("x..");
    }
}
