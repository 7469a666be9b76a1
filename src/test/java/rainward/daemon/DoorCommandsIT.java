package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.daemon.demo.InventedWeather;

/** Who may come to the board from the network, typed. */
class DoorCommandsIT {

    @TempDir
    Path home;

    @Test
    void personIsAdmittedListedAndDismissed() {
        Desk desk = new Desk(home, InventedWeather.MONDAY).withSettings(Desk.crew());
        assertThat(desk.type("door").out()).contains("Nobody");

        assertThat(desk.type("door", "Tobin", "--role", "crew").out())
                .containsPattern(
                        "Tobin may come in as crew with the PIN \\d{6}, told this once\\.");

        assertThat(desk.type("door", "--json").json().path(0).path("role").asText())
                .isEqualTo("crew");
        assertThat(desk.type("door", "Tobin", "--shut").out()).contains("not come in any more");
        assertThat(desk.type("door", "Tobin", "--shut").out()).contains("could not come in before");
        assertThat(desk.type("door", "Tobin", "--role", "king").err())
                .contains("'king' is no role: write read, crew or lead.");
    }
}
