package floorgauge.app.export;

import java.text.Normalizer;
import java.util.regex.Pattern;

/** Text for formats that know nothing but ASCII. */
public final class PlainText {

    private static final Pattern MARKS = Pattern.compile("\\p{M}+");
    private static final Pattern OTHERS = Pattern.compile("[^\\x20-\\x7e]");

    private PlainText() {}

    /** Accents go, signs of measurement are spelt out, the rest becomes a question mark. */
    public static String ascii(String text) {
        String spelt = text.replace("\u00b1", "+/-")
                .replace("\u2212", "-")
                .replace("\u00b2", "2")
                .replace("\u00b0", " deg")
                .replace('\u00a0', ' ')
                .replace('\u2019', '\'')
                .replace("\u00df", "ss");
        String bare =
                MARKS.matcher(Normalizer.normalize(spelt, Normalizer.Form.NFD)).replaceAll("");
        return OTHERS.matcher(bare.replaceAll("\\s", " ")).replaceAll("?");
    }
}
