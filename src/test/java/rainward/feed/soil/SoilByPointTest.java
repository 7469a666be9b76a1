package rainward.feed.soil;

import static com.github.tomakehurst.wiremock.client.WireMock.containing;
import static com.github.tomakehurst.wiremock.client.WireMock.post;
import static com.github.tomakehurst.wiremock.client.WireMock.postRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rainward.feed.Sky.NOW;

import com.github.tomakehurst.wiremock.client.ResponseDefinitionBuilder;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rainward.feed.Sky;

/** Soil at a place: a mixture of components, values as text, and services that are often down. */
class SoilByPointTest {

    private static final String SURVEY = "/tabular/post.rest";
    private static final String GRID = "/soilgrids/v2.0/properties/query";
    private static final String NAMES =
            "[\"compname\",\"comppct_r\",\"slope_r\",\"hzdept_r\",\"hzdepb_r\",\"sandtotal_r\","
                    + "\"silttotal_r\",\"claytotal_r\",\"om_r\"]";

    private final Sky sky = new Sky();

    @AfterEach
    void close() {
        sky.close();
    }

    @Test
    void componentsWeighByShareAndHorizonsByThickness() {
        survey(Sky.json("{\"Table\":[" + NAMES
                + ",[\"Oak\",\"60\",\"4\",\"0\",\"20\",\"50\",\"30\",\"20\",\"3\"]"
                + ",[\"Oak\",\"60\",\"4\",\"20\",\"80\",\"20\",\"40\",\"40\",\"1\"]"
                + ",[\"Elm\",\"30\",\"10\",\"0\",\"30\",\"80\",\"15\",\"5\",null]"
                + ",[\"Water\",\"10\",null,null,null,null,null,null,null]]}"));
        var soil = at().soil().orElseThrow();
        // Oak: 20 cm of 50 and 10 cm of 20 %, 60 parts; Elm: 30 cm of 80 %, 30 parts.
        assertThat(soil.texture().sandFraction())
                .isCloseTo((1200 * 0.5 + 600 * 0.2 + 900 * 0.8) / 2700, within(1e-9));
        assertThat(soil.texture().clayFraction())
                .isCloseTo((1200 * 0.2 + 600 * 0.4 + 900 * 0.05) / 2700, within(1e-9));
        assertThat(soil.texture().organicMatterPct())
                .isCloseTo((1200 * 3 + 600 * 1) / 1800.0, within(1e-9));
        assertThat(soil.slopeFraction().orElseThrow())
                .isCloseTo((1800 * 0.04 + 900 * 0.10) / 2700, within(1e-9));
        assertThat(soil.described()).isEqualTo("Oak 60 %, Elm 30 %");
        assertThat(soil.origin().source()).isEqualTo("soil-survey");
        assertThat(soil.origin().fetchedAt()).isEqualTo(NOW);
        sky.server.verify(
                1,
                postRequestedFor(urlPathEqualTo(SURVEY))
                        .withRequestBody(containing("point%28-84.2%2042.1%29")));
    }

    @Test
    void oneAnswerLastsAYear() {
        survey(Sky.json("{\"Table\":[" + NAMES
                + ",[\"Oak\",\"60\",\"4\",\"0\",\"20\",\"50\",\"30\",\"20\",\"3\"]]}"));
        at();
        sky.restart();
        new SoilByPoint(sky.client())
                .at(Sky.FARM, Optional.empty(), NOW.plus(Duration.ofDays(300)));
        assertThat(sky.asked()).isEqualTo(1);
    }

    @Test
    void whereTheSurveyIsDownOrEmptyTheWorldGridStandsIn() {
        for (ResponseDefinitionBuilder bad : new ResponseDefinitionBuilder[] {
            Sky.page(200), Sky.json("{}"), Sky.json("{\"Table\":[" + NAMES + "]}")
        }) {
            sky.restart();
            survey(bad);
            sky.on(GRID, Sky.json(grid()));
            var proposal = at();
            assertThat(proposal.notes()).hasSize(1).allMatch(n -> n.startsWith("soil-survey "));
            assertThat(proposal.soil().orElseThrow().origin().source()).isEqualTo("soil-grids");
        }
    }

    @Test
    void theWorldGridsNumbersAreDividedByTheFactorBesideThem() {
        survey(Sky.page(503));
        sky.on(GRID, Sky.json(grid()));
        var soil = at().soil().orElseThrow();
        // Sand 40 % over 5 cm and 46 % over 10 cm, clay 20 %, carbon 14.5 g/kg.
        assertThat(soil.texture().sandFraction()).isCloseTo(0.44, within(1e-9));
        assertThat(soil.texture().clayFraction()).isCloseTo(0.20, within(1e-9));
        assertThat(soil.texture().organicMatterPct()).isCloseTo(2.4998, within(1e-4));
        assertThat(soil.slopeFraction()).isEmpty();
    }

    @Test
    void withBothDownNothingIsProposedAndBothAreNamed() {
        survey(Sky.page(503));
        sky.on(GRID, Sky.page(504));
        var proposal = at();
        assertThat(proposal.soil()).isEmpty();
        assertThat(proposal.notes())
                .anyMatch(n -> n.startsWith("soil-survey is in trouble itself (503"))
                .anyMatch(n -> n.startsWith("soil-grids is in trouble itself (504"));
    }

    private static String grid() {
        return "{\"properties\":{\"layers\":["
                + layer("sand", 10, "400", "460") + "," + layer("clay", 10, "200", "200") + ","
                + layer("soc", 10, "145", "145") + "]}}";
    }

    private static String layer(String name, int factor, String first, String second) {
        return "{\"name\":\"" + name + "\",\"unit_measure\":{\"d_factor\":" + factor
                + "},\"depths\":[{\"range\":{\"top_depth\":0,\"bottom_depth\":5},\"values\":{\"mean\":"
                + first
                + "}},{\"range\":{\"top_depth\":5,\"bottom_depth\":15},\"values\":{\"mean\":"
                + second
                + "}},{\"range\":{\"top_depth\":15,\"bottom_depth\":30},\"values\":{\"mean\":"
                + "null}}]}";
    }

    private SoilByPoint.Proposal at() {
        return new SoilByPoint(sky.client()).at(Sky.FARM, Optional.empty(), NOW);
    }

    private void survey(ResponseDefinitionBuilder answer) {
        sky.server.stubFor(post(urlPathEqualTo(SURVEY)).willReturn(answer));
    }
}
