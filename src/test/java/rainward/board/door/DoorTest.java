package rainward.board.door;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Names, PINs and roles. */
class DoorTest {

    @ParameterizedTest
    @CsvSource({
        "localhost, true",
        "localhost:8640, true",
        "LOCALHOST:8640, true",
        "127.0.0.1:8640, true",
        "[::1]:8640, true",
        "yard-pc.lan:8640, true",
        "192.168.7.4, true",
        "localhost.evil.example, false",
        "evil.example:8640, false",
        "127.0.0.1.evil.example, false",
        "'', false"
    })
    void answersToItsOwnNamesAlone(String host, boolean own) {
        HostNames names = HostNames.of("192.168.7.4", Set.of("Yard-PC.lan"));

        assertThat(names.own(host)).isEqualTo(own);
    }

    @ParameterizedTest
    @ValueSource(strings = {"12345", "1234567890123", "12a456", "111111", "123456", "987654", ""})
    void pinThatAnybodyGuessesIsNotTaken(String pin) {
        assertThat(PinHash.faultOf(pin)).isNotEmpty();
    }

    @Test
    void hashIsSlowAndOfOnePin() {
        String hash = PinHash.of("481516");

        assertThat(PinHash.faultOf("481516")).isEmpty();
        assertThat(hash).startsWith("$2b$12$");
        assertThat(PinHash.matches("481516", hash)).isTrue();
        assertThat(PinHash.matches("481517", hash)).isFalse();
    }

    @Test
    void knownVectorOfTheHashIsRead() {
        // Worked vector of the OpenBSD bcrypt implementation, as printed with jBCrypt's tests; from
        // memory.
        String hash = "$2a$06$m0CrhHm10qJ3lXRY.5zDGO3rS2KdeeWLuGmsfGlMfOxih58VYVfxe";

        assertThat(com.password4j.BcryptFunction.getInstance(com.password4j.types.Bcrypt.A, 6)
                        .check("a", hash))
                .isTrue();
    }

    @Test
    void wrongPinsOfOneNameDoNotShutOutAnother() {
        Person dell = new Person("Dell", Role.LEAD, PinHash.of("481516"));
        Person ruth = new Person("Ruth", Role.CREW, PinHash.of("314159"));
        Doorbell bell = new Doorbell(() -> List.of(dell, ruth));

        for (int i = 0; i < 5; i++) {
            assertThat(bell.ring("Dell", "00000" + i, "10.0.0.9").person()).isEmpty();
        }

        assertThat(bell.ring("Dell", "481516", "10.0.0.9").words()).contains("Too many");
        assertThat(bell.ring("Ruth", "314159", "10.0.0.8").person()).contains(ruth);
    }

    @Test
    void rightPinsAreNeverTooMany() {
        Person ruth = new Person("Ruth", Role.CREW, PinHash.of("314159"));
        Doorbell bell = new Doorbell(() -> List.of(ruth));

        for (int i = 0; i < 7; i++) {
            assertThat(bell.ring("Ruth", "314159", "10.0.0.8").person()).isPresent();
        }
    }

    @Test
    void eachRoleMayWhatThoseBeforeItMay() {
        assertThat(Role.LEAD.mayDo(Role.READ)).isTrue();
        assertThat(Role.CREW.mayDo(Role.CREW)).isTrue();
        assertThat(Role.READ.mayDo(Role.CREW)).isFalse();
    }
}
