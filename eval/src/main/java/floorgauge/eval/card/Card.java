package floorgauge.eval.card;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.EnumMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The card's file: a heading of the second rank a part, in the order of {@link CardPart}. A part that the file lacks says so.
 *
 * @param parts what stands below the heading of each part that was made
 */
record Card(Map<CardPart, String> parts) {

    private static final String HEAD = """
            # Score card

                eval/score-card --gym FOLDER

            Each part says on which day and by which command it was made; none is edited by hand, and a part stays as it is until it is made
            again. Intervals hold 90 %, from resampling scenes or films.
            """;

    private static final String UNMADE = "Not measured yet";

    private static final Pattern HEADING = Pattern.compile("(?m)^## (.*)$");

    Card {
        parts = Map.copyOf(parts);
    }

    /** The card in a file; one without parts where there is no file. */
    static Card read(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            return new Card(Map.of());
        }
        String text = Files.readString(file);
        Map<String, CardPart> titles = Stream.of(CardPart.values()).collect(Collectors.toMap(CardPart::title, p -> p));
        Map<CardPart, String> parts = new EnumMap<>(CardPart.class);
        Matcher heading = HEADING.matcher(text);
        for (boolean more = heading.find(); more; ) {
            CardPart part = titles.get(heading.group(1));
            int from = heading.end();
            more = heading.find();
            String body =
                    text.substring(from, more ? heading.start() : text.length()).strip();
            if (part != null && !body.startsWith(UNMADE)) {
                parts.put(part, body);
            }
        }
        return new Card(parts);
    }

    /** This card with a part made anew. */
    Card with(CardPart part, String date, String command, String body) {
        Map<CardPart, String> all = new EnumMap<>(CardPart.class);
        all.putAll(parts);
        all.put(part, "Made on " + date + " by `" + command + "`.\n\n" + body.strip());
        return new Card(all);
    }

    /** Writes beside the file and moves it there. */
    void write(Path file) throws IOException {
        Path beside = file.resolveSibling(file.getFileName() + ".part");
        Files.writeString(beside, text());
        Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    }

    String text() {
        StringBuilder text = new StringBuilder(HEAD);
        for (CardPart part : CardPart.values()) {
            text.append("\n## ")
                    .append(part.title())
                    .append("\n\n")
                    .append(parts.getOrDefault(part, UNMADE + ": `" + CardOptions.command(part) + "` does so."))
                    .append("\n");
        }
        return text.toString();
    }
}
