package floorgauge.app.export;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimecodeTest {

    @Test
    void aFilmWithoutLengthHasARateAllTheSame() {
        assertThat(FrameRate.of(0, 0)).isEqualTo(new FrameRate(25, 1));
        assertThat(FrameRate.of(10, 0)).isEqualTo(new FrameRate(25, 1));
    }

    @ParameterizedTest
    @CsvSource({
        "240, 8.0, 30, 1",
        "240, 8.008, 30000, 1001",
        "1000, 40, 25, 1",
        "36, 1.5015, 24000, 1001",
        "73, 7.3, 10000, 1000"
    })
    void usualRatesAreKnown(long frames, double seconds, int numerator, int denominator) {
        assertThat(FrameRate.of(frames, seconds)).isEqualTo(new FrameRate(numerator, denominator));
    }

    /** Counts of SMPTE ST 12-1 drop-frame timecode, as commonly tabulated (from memory). */
    @ParameterizedTest
    @CsvSource({
        "0, 00:00:00:00",
        "1799, 00:00:59:29",
        "1800, 00:01:00:02",
        "17981, 00:09:59:29",
        "17982, 00:10:00:00",
        "19781, 00:10:59:29",
        "19782, 00:11:00:02",
        "107892, 01:00:00:00"
    })
    void numbersAreDroppedEveryMinuteButTheTenth(long frames, String text) {
        Timecode timecode = Timecode.of(new FrameRate(30000, 1001));
        assertThat(timecode.dropsNumbers()).isTrue();
        assertThat(timecode.text(frames)).isEqualTo(text);
        assertThat(timecode.framesInHours(1)).isEqualTo(107892);
    }

    /** An hour of the clock is within a frame of an hour of drop-frame timecode: that is what it is for. */
    @Test
    void dropFrameKeepsToTheClock() {
        Timecode timecode = Timecode.of(new FrameRate(60000, 1001));
        assertThat(timecode.text(timecode.frameAt(3600))).isEqualTo("01:00:00:00");
    }

    @ParameterizedTest
    @CsvSource({
        "25, 1, 2.48, 00:00:02:12",
        "50, 1, 2.48, 00:00:02:12",
        "60, 1, 61.5, 00:01:01:15",
        "24, 1, 3661, 01:01:01:00"
    })
    void otherRatesCountEveryFrame(int numerator, int denominator, double seconds, String text) {
        Timecode timecode = Timecode.of(new FrameRate(numerator, denominator));
        assertThat(timecode.dropsNumbers()).isFalse();
        assertThat(timecode.text(timecode.frameAt(seconds))).isEqualTo(text);
    }
}
