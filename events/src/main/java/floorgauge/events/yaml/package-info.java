/** YAML text to nodes that know their line, and hints for misspelt words; shared by the standards file and the scripts. */
package floorgauge.events.yaml;
