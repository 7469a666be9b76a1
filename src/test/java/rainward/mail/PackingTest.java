package rainward.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rainward.brief.SampleCrew;
import rainward.brief.post.Letter;
import rainward.brief.post.Outgoing;

/** How long a message is tried. */
class PackingTest {

    private static final Duration TRIED_FOR = Duration.ofHours(24);

    private static final Packing PACKING =
            new Packing(new MimeLetter(Mails.SENDER, SampleCrew.FARM), TRIED_FOR);

    private static Outgoing.Times times(Optional<Instant> usefulUntil, Instant sendFrom) {
        Letter letter = new Letter(
                "window/w1/1",
                List.of(),
                "Storm window",
                new Letter.Written(Mails.DAWN, SampleCrew.DETROIT, usefulUntil),
                Letter.Body.ofText("rain"));
        return PACKING.pack(letter, Mails.BOYD, sendFrom).times();
    }

    private static Optional<Instant> after(Duration dawn) {
        return Optional.of(Mails.DAWN.plus(dawn));
    }

    @Test
    void whatStaysOfUseIsTriedAsLongAsTheSettingsSay() {
        assertThat(times(Optional.empty(), Mails.DAWN).giveUpAt())
                .isEqualTo(Mails.DAWN.plus(TRIED_FOR));
        assertThat(times(after(Duration.ofHours(30)), Mails.DAWN).giveUpAt())
                .isEqualTo(Mails.DAWN.plus(TRIED_FOR));
    }

    @Test
    void whatComesTooLateIsGivenUpThen() {
        assertThat(times(after(Duration.ofHours(3)), Mails.DAWN).giveUpAt())
                .isEqualTo(Mails.DAWN.plus(Duration.ofHours(3)));
    }

    @Test
    void whatIsAlmostTooLateIsTriedAllTheSame() {
        Instant tenMinutesOn = Mails.DAWN.plus(Duration.ofMinutes(10));

        assertThat(times(after(Duration.ofMinutes(2)), Mails.DAWN).giveUpAt())
                .isEqualTo(tenMinutesOn);
        assertThat(times(after(Duration.ofHours(-2)), Mails.DAWN).giveUpAt())
                .isEqualTo(tenMinutesOn);
    }

    @Test
    void whatIsHeldIsTriedFromTheEndOfTheHold() {
        Instant held = Mails.DAWN.plus(Duration.ofHours(6));

        Outgoing.Times times = times(Optional.empty(), held);

        assertThat(times.createdAt()).isEqualTo(Mails.DAWN);
        assertThat(times.sendFrom()).isEqualTo(held);
        assertThat(times.giveUpAt()).isEqualTo(held.plus(TRIED_FOR));
    }
}
