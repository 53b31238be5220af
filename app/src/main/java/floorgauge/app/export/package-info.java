/**
 * Files for other programs. Folders of results flow in; cut lists, chapters, tables, tracks and clips flow out, each in a
 * published format. Nothing is measured here.
 */
package floorgauge.app.export;
