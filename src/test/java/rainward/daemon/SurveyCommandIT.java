package rainward.daemon;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.containing;
import static com.github.tomakehurst.wiremock.client.WireMock.post;
import static com.github.tomakehurst.wiremock.client.WireMock.postRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rainward.feed.Sky;

/** Soil from the survey: asked for, shown, taken, left, and never in the way. */
class SurveyCommandIT {

    private static final String PATH = "/tabular/post.rest";

    /** Three quarters of the field sandy, one quarter clayey. */
    private static final String TABLE = """
            {"Table":[["compname","comppct_r","slope_r","hzdept_r","hzdepb_r","sandtotal_r",
            "silttotal_r","claytotal_r","om_r","mukey","map_share"],
            ["Oak sand","100","2","0","30","80","12","8","1.5","11","0.75"],
            ["Elm clay","100","6","0","30","20","40","40","3.5","12","2.5E-1"]]}
            """;

    @TempDir
    Path home;

    private final Sky sky = new Sky();

    @AfterEach
    void close() {
        sky.close();
    }

    private Desk desk() {
        Desk desk = new Desk(home, Sky.NOW)
                .withSettings(
                        Desk.crew() + """

                        [weather.address]
                        soil_survey = "%s"
                        soil_grids = "%s"
                        """.formatted(sky.server.baseUrl(), sky.server.baseUrl()));
        desk.type("import", "src/test/resources/feed/two-fields.geojson");
        return desk;
    }

    private static JsonNode first(Desk.Said said) {
        return said.json().path("fields").get(0);
    }

    @Test
    void mapUnitsCountByTheirShareOfTheFieldAndAPersonTakesThem() {
        sky.server.stubFor(post(urlPathEqualTo(PATH)).willReturn(Sky.json(TABLE)));
        Desk desk = desk();

        JsonNode proposed = first(desk.type("survey", "--ask", "--json"));

        JsonNode survey = proposed.path("survey");
        assertThat(survey.path("sandFraction").asDouble()).isCloseTo(0.65, within(1e-9));
        assertThat(survey.path("clayFraction").asDouble()).isCloseTo(0.16, within(1e-9));
        assertThat(survey.path("organicMatterPct").asDouble()).isCloseTo(2.0, within(1e-9));
        assertThat(survey.path("slopeFraction").asDouble()).isCloseTo(0.03, within(1e-9));
        assertThat(survey.path("state").asText()).isEqualTo("PROPOSED");
        assertThat(proposed.path("inUse").path("texture").path("sandFraction").asDouble())
                .isNotCloseTo(0.65, within(0.01));
        sky.server.verify(
                2,
                postRequestedFor(urlPathEqualTo(PATH)).withRequestBody(containing("MULTIPOLYGON")));
        assertThat(desk.type("check").out()).contains("2 wait for you");

        JsonNode taken = first(desk.type("survey", "MP1", "--take", "--json"));
        assertThat(taken.path("inUse").path("texture").path("sandFraction").asDouble())
                .isCloseTo(0.65, within(1e-9));
        JsonNode left = first(desk.type("survey", "MP2", "--leave", "--json"));
        assertThat(left.path("survey").path("state").asText()).isEqualTo("LEFT");

        desk.type("survey", "--ask");
        assertThat(sky.asked()).as("asked once a field").isEqualTo(2);
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(delimiter = '|', textBlock = """
            0.75 | map units that cover a third of the field | 0.08
            0.75 | map units that cover it three times       | 2.25
            """)
    void anOddAnswerAboutTheWholeFieldGivesWayToTheMapUnitAtAPoint(
            String usual, String what, String odd) {
        String mapped = TABLE.replace("\"" + usual + "\"", "\"" + odd + "\"");
        sky.server.stubFor(post(urlPathEqualTo(PATH)).willReturn(Sky.json(mapped)));
        atAPoint();

        JsonNode survey = first(desk().type("survey", "--ask", "--json")).path("survey");

        assertThat(survey.path("sandFraction").asDouble()).as(what).isCloseTo(0.5, within(1e-9));
        assertThat(survey.path("described").asText())
                .isEqualTo("Ash 90 %; at one point of the field, since the whole of it could not be"
                        + " had");
    }

    @Test
    void aRefusedQuestionAboutTheWholeFieldGivesWayToTheMapUnitAtAPoint() {
        sky.server.stubFor(post(urlPathEqualTo(PATH))
                .willReturn(aResponse()
                        .withStatus(400)
                        .withBody("<ServiceException>Invalid query</ServiceException>")));
        atAPoint();
        Desk desk = desk();

        JsonNode survey = first(desk.type("survey", "--ask", "--json")).path("survey");

        assertThat(survey.path("sandFraction").asDouble()).isCloseTo(0.5, within(1e-9));
        assertThat(desk.type("survey").out()).contains("at one point of the field");
    }

    private void atAPoint() {
        sky.server.stubFor(post(urlPathEqualTo(PATH))
                .withRequestBody(containing("SDA_Get_Mukey_from_intersection"))
                .willReturn(Sky.json("""
                        {"Table":[["compname","comppct_r","slope_r","hzdept_r","hzdepb_r",
                        "sandtotal_r","silttotal_r","claytotal_r","om_r"],
                        ["Ash","90","3","0","30","50","30","20","2"]]}
                        """)));
    }

    @Test
    void surveyThatIsDownIsToldAndAskedForOneFieldOnly() {
        Desk desk = desk();

        Desk.Said said = desk.type("survey", "--ask");

        assertThat(said.exitCode()).isEqualTo(1);
        assertThat(said.out()).contains("soil-survey", "soil-grids", "not asked yet");
        assertThat(sky.asked()).isLessThanOrEqualTo(3);
        Desk.Said early = desk.type("survey", "MP1", "--take");
        assertThat(early.exitCode()).isEqualTo(2);
        assertThat(early.err()).contains("No survey was fetched for MP1");
    }
}
