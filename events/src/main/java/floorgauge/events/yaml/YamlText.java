package floorgauge.events.yaml;

import java.util.Optional;
import java.util.function.BiFunction;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.composer.Composer;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.parser.ParserImpl;
import org.yaml.snakeyaml.reader.StreamReader;
import org.yaml.snakeyaml.resolver.Resolver;

/** One YAML document as nodes that know where they stand. */
public final class YamlText {

    private YamlText() {}

    /**
     * @param text one document
     * @param failure makes an exception from a line, from 1, and a message
     * @return the root; empty where the text holds nothing but comments
     */
    public static Optional<Node> parse(String text, BiFunction<Integer, String, ? extends RuntimeException> failure) {
        LoaderOptions options = new LoaderOptions();
        options.setAllowDuplicateKeys(true);
        try {
            Composer composer = new Composer(new ParserImpl(new StreamReader(text), options), new Resolver(), options);
            return Optional.ofNullable(composer.getSingleNode());
        } catch (MarkedYAMLException e) {
            Mark mark = e.getProblemMark() != null ? e.getProblemMark() : e.getContextMark();
            throw failure.apply(mark == null ? 1 : mark.getLine() + 1, "not YAML: " + oneLine(e.getProblem()));
        } catch (YAMLException e) {
            throw failure.apply(1, "not YAML: " + oneLine(e.getMessage()));
        }
    }

    /** The line a node starts on, from 1. */
    public static int line(Node node) {
        return node.getStartMark() == null ? 1 : node.getStartMark().getLine() + 1;
    }

    private static String oneLine(String message) {
        return message == null ? "cannot be read" : message.lines().findFirst().orElse("cannot be read");
    }
}
