package floorgauge.eval.figures;

import static org.assertj.core.api.Assertions.assertThat;

import floorgauge.events.finding.FindingKind;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Diagrams of scenes of the library. */
class DiagramTest {

    private static final List<String> ACTIONS = List.of("floppy-sound", "horns-double-sound", "chin-handoff-sound");

    @Test
    void drawingsAreXmlWithATextEquivalentAndFitSixCentimetres() throws Exception {
        for (String action : ACTIONS) {
            for (String svg : DefinitionFigures.action(action)) {
                Element root = parse(svg).getDocumentElement();
                assertThat(root.getAttribute("viewBox")).startsWith("0 0 60 ");
                assertThat(root.getAttribute("role")).isEqualTo("img");
                assertThat(root.getElementsByTagName("title").getLength()).isEqualTo(1);
                assertThat(root.getElementsByTagName("desc").item(0).getTextContent())
                        .contains("Attackers: ");
            }
        }
    }

    @Test
    void theSameSceneGivesTheSameBytes() {
        assertThat(DefinitionFigures.action("floppy-sound")).isEqualTo(DefinitionFigures.action("floppy-sound"));
        assertThat(DefinitionFigures.figure(FindingKind.SCREEN))
                .isEqualTo(DefinitionFigures.figure(FindingKind.SCREEN));
    }

    /** Numbers of steps are discs without an outline of ink; attackers' marks are rings. */
    @Test
    void noNumberOfAStepCoversAnAttackersMark() throws Exception {
        for (String action : ACTIONS) {
            for (String svg : DefinitionFigures.action(action)) {
                List<double[]> rings = circles(svg, true);
                List<double[]> discs = circles(svg, false);
                assertThat(rings).as(action).isNotEmpty();
                for (double[] disc : discs) {
                    for (double[] ring : rings) {
                        assertThat(Math.hypot(disc[0] - ring[0], disc[1] - ring[1]))
                                .as(action)
                                .isGreaterThan(disc[2] + ring[2]);
                    }
                }
            }
        }
    }

    @Test
    void aScreensFigureHasItsGapAsADimension() throws Exception {
        String svg = DefinitionFigures.figure(FindingKind.SCREEN).orElseThrow();
        NodeList texts = parse(svg).getElementsByTagName("text");
        List<String> words = new ArrayList<>();
        for (int i = 0; i < texts.getLength(); i++) {
            words.add(texts.item(i).getTextContent());
        }
        assertThat(words).anyMatch(w -> w.matches("-?\\d+\\.\\d\\d ± \\d+\\.\\d\\d m"));
    }

    private static List<double[]> circles(String svg, boolean rings) throws Exception {
        NodeList circles = parse(svg).getElementsByTagName("circle");
        List<double[]> found = new ArrayList<>();
        for (int i = 0; i < circles.getLength(); i++) {
            Element circle = (Element) circles.item(i);
            if (circle.getAttribute("fill").equals("#fff") == rings) {
                found.add(new double[] {
                    Double.parseDouble(circle.getAttribute("cx")),
                    Double.parseDouble(circle.getAttribute("cy")),
                    Double.parseDouble(circle.getAttribute("r"))
                });
            }
        }
        return found;
    }

    private static Document parse(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }
}
