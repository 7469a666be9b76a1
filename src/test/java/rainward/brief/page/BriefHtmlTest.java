package rainward.brief.page;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.brief.BriefDays;
import rainward.brief.Golden;
import rainward.farm.UnitSystem;

/** The brief as a page. */
class BriefHtmlTest {

    static Stream<String> days() {
        return BriefDays.all().keySet().stream();
    }

    static String page(String day) {
        return BriefHtml.of(
                BriefDays.day(day).brief(),
                UnitSystem.US_CUSTOMARY,
                (number, panel) -> "cid:rain-" + number);
    }

    @ParameterizedTest
    @MethodSource("days")
    void looksAsKept(String day) {
        Golden.check("brief/" + day + ".html", page(day));
    }
}
