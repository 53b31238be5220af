package floorgauge.app.export;

import java.util.Locale;

/**
 * Hours, minutes, seconds and frames as cut lists count them (SMPTE ST 12-1; from memory). Films above 30 frames a second
 * are counted at half or a quarter of their rate, since a frame number has two digits up to 29. At 30000/1001 frames a second the first
 * two numbers of every minute are left out but for every tenth minute, so that the count keeps to the clock.
 *
 * @param rate frames counted a second
 * @param base numbers counted a second: 24, 25 or 30
 * @param dropsNumbers whether numbers are left out to keep to the clock
 */
public record Timecode(FrameRate rate, int base, boolean dropsNumbers) {

    private static final FrameRate THIRTY_DROP = new FrameRate(30000, 1001);
    private static final int DROPPED = 2;
    private static final int TEN = 10;
    private static final int SIXTY = 60;

    /** The count for a film. */
    static Timecode of(FrameRate film) {
        double perSecond = film.perSecond();
        if (film.denominator() == 1001) {
            return film.numerator() == 24000 ? new Timecode(film, 24, false) : new Timecode(THIRTY_DROP, 30, true);
        }
        if (perSecond == 24 || perSecond == 48) {
            return new Timecode(new FrameRate(24, 1), 24, false);
        }
        if (perSecond == 25 || perSecond == 50) {
            return new Timecode(new FrameRate(25, 1), 25, false);
        }
        return new Timecode(new FrameRate(30, 1), 30, false);
    }

    /** The frame counted at a moment. */
    long frameAt(double seconds) {
        return rate.frameAt(seconds);
    }

    /** A count of frames as text, such as {@code 01:00:04:12}; hours turn over after 24. */
    public String text(long frames) {
        long number = dropsNumbers ? withDropped(frames) : frames;
        long seconds = number / base;
        return String.format(
                Locale.ROOT,
                "%02d:%02d:%02d:%02d",
                seconds / (SIXTY * SIXTY) % 24,
                seconds / SIXTY % SIXTY,
                seconds % SIXTY,
                number % base);
    }

    /** The frame that has this count at an hour's start. */
    long framesInHours(int hours) {
        long numbers = (long) hours * SIXTY * SIXTY * base;
        return dropsNumbers ? numbers - (long) hours * SIXTY / TEN * (TEN - 1) * DROPPED : numbers;
    }

    private long withDropped(long frames) {
        int minute = SIXTY * base - DROPPED;
        int tenMinutes = TEN * SIXTY * base - (TEN - 1) * DROPPED;
        long tens = frames / tenMinutes;
        long within = frames % tenMinutes;
        long minutes = within < SIXTY * base ? 0 : 1 + (within - SIXTY * base) / minute;
        return frames + tens * (TEN - 1) * DROPPED + minutes * DROPPED;
    }
}
