<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de">
<context>
    <name>core</name>
    <message>
        <source>Pull the wire through tweezers and measure it from end to end.</source>
        <translation>Draht durch die Pinzette ziehen und von Ende zu Ende messen.</translation>
    </message>
    <message>
        <source>Solder the wire to {from}.</source>
        <translation>Draht an {from} löten.</translation>
    </message>
    <message>
        <source>Solder the wire to {to}.</source>
        <translation>Draht an {to} löten.</translation>
    </message>
    <message>
        <source>Measure from {to} to ground and to its neighbours.</source>
        <translation>Von {to} nach Masse und zu den Nachbarn messen.</translation>
    </message>
    <message>
        <source>Take the line&apos;s readings at both ends of the wire again.</source>
        <translation>Messungen der Leitung an beiden Drahtenden wiederholen.</translation>
    </message>
    <message>
        <source>Look at {target} under the microscope for rings and cracks; take a photo.</source>
        <translation>{target} unter dem Mikroskop auf Ringe und Risse ansehen; Foto machen.</translation>
    </message>
    <message>
        <source>Let it cool without a draught, then clean off the flux.</source>
        <translation>Ohne Luftzug abkühlen lassen, dann Flussmittel abwaschen.</translation>
    </message>
    <message>
        <source>Look at the joint from all sides.</source>
        <translation>Lötstelle von allen Seiten ansehen.</translation>
    </message>
    <message>
        <source>Measure {points}.</source>
        <translation>{points} messen.</translation>
    </message>
    <message>
        <source>Measure from {points} to ground and to the neighbouring nets.</source>
        <translation>Von {points} nach Masse und zu den Nachbarnetzen messen.</translation>
    </message>
    <message>
        <source>Take a photo of {target} with its marking and direction.</source>
        <translation>{target} mit Aufdruck und Richtung fotografieren.</translation>
    </message>
    <message>
        <source>Look at the pads.</source>
        <translation>Lötflächen ansehen.</translation>
    </message>
    <message>
        <source>Level the pads with wick and flux and clean them.</source>
        <translation>Lötflächen mit Litze und Flussmittel ebnen und reinigen.</translation>
    </message>
    <message>
        <source>Measure {points} with the part off.</source>
        <translation>{points} ohne das Bauteil messen.</translation>
    </message>
    <message>
        <source>Measure the new part before fitting.</source>
        <translation>Neues Bauteil vor dem Einsetzen messen.</translation>
    </message>
    <message>
        <source>Look at all joints and at the direction.</source>
        <translation>Alle Lötstellen und die Richtung ansehen.</translation>
    </message>
    <message>
        <source>Take off lids and what covers {target}; take a photo before cleaning.</source>
        <translation>Deckel und was {target} verdeckt abnehmen; vor dem Reinigen fotografieren.</translation>
    </message>
    <message>
        <source>Look at {target} under the microscope.</source>
        <translation>{target} unter dem Mikroskop ansehen.</translation>
    </message>
    <message>
        <source>Mark the place on {target} where nothing else lies close; take a photo.</source>
        <translation>Stelle auf {target} markieren, wo nichts anderes nahe liegt; Foto machen.</translation>
    </message>
    <message>
        <source>Measure across the cut.</source>
        <translation>Über den Schnitt messen.</translation>
    </message>
    <message>
        <source>Measure from both sides of the cut to ground and to the neighbours.</source>
        <translation>Von beiden Seiten des Schnitts nach Masse und zu den Nachbarn messen.</translation>
    </message>
    <message>
        <source>Seal the cut with mask and cure it.</source>
        <translation>Schnitt mit Lack versiegeln und härten.</translation>
    </message>
    <message>
        <source>Write down what was found: {target}. Reason: {reason}.</source>
        <translation>Befund aufschreiben: {target}. Grund: {reason}.</translation>
    </message>
    <message>
        <source>OL in diode mode</source>
        <translation>OL in Diodenmessung</translation>
    </message>
    <message>
        <source>the value that the rest of the line gives there</source>
        <translation>der Wert, den der Rest der Leitung dort gibt</translation>
    </message>
    <message>
        <source>the value of a good board</source>
        <translation>der Wert einer guten Platine</translation>
    </message>
    <message>
        <source>strip its ends</source>
        <translation>Enden abisolieren</translation>
    </message>
    <message>
        <source>strips in the tin of a hot iron, about 375 to 390 °C</source>
        <translation>löst sich im Zinn eines heißen Kolbens, etwa 375 bis 390 °C</translation>
    </message>
    <message>
        <source>has to be scraped off; no iron strips it</source>
        <translation>abkratzen; kein Kolben löst sie</translation>
    </message>
    <message>
        <source>with a wire stripper</source>
        <translation>mit der Abisolierzange</translation>
    </message>
    <message>
        <source>one half of a fast pair: bridge both halves with equal length on the same way, close together, or the link may fail at speed</source>
        <translation>eine Hälfte eines schnellen Paars: beide Hälften gleich lang auf demselben Weg überbrücken, dicht beieinander, sonst versagt die Verbindung vielleicht bei vollem Tempo</translation>
    </message>
    <message>
        <source>radio line: a loose wire is not its impedance and radiates; a jumper is advised against, use the right coaxial jumper or replace the board</source>
        <translation>Funkleitung: ein loser Draht hat nicht ihre Impedanz und strahlt; von einer Drahtbrücke wird abgeraten, passendes Koaxialkabel verwenden oder Platine ersetzen</translation>
    </message>
    <message>
        <source>Local rules and the maker&apos;s safety notes come first.</source>
        <translation>Örtliche Vorschriften und Sicherheitshinweise des Herstellers gehen vor.</translation>
    </message>
    <message>
        <source>Disconnect and remove the battery before any heat. A swollen or damaged cell is not touched, pressed or charged.</source>
        <translation>Akku vor jeder Hitze abstecken und entfernen. Eine geblähte oder beschädigte Zelle nicht berühren, drücken oder laden.</translation>
    </message>
    <message>
        <source>Discharge capacitors before touching or heating the board.</source>
        <translation>Kondensatoren entladen, bevor die Platine berührt oder erhitzt wird.</translation>
    </message>
    <message>
        <source>Devices on mains power are opened and repaired only by persons licensed for it.</source>
        <translation>Geräte am Netz öffnen und reparieren nur dafür Befugte.</translation>
    </message>
    <message>
        <source>Protect your eyes: UV lamp, scraping, clipped wire, parts that burst under injected current.</source>
        <translation>Augen schützen: UV-Lampe, Kratzen, abgezwickter Draht, Bauteile, die unter eingespeistem Strom platzen.</translation>
    </message>
    <message>
        <source>Extract solder and solvent fumes; do not breathe the dust of scraped glass fibre; wash your hands after solder with lead.</source>
        <translation>Löt- und Lösemitteldämpfe absaugen; Staub gekratzter Glasfaser nicht einatmen; nach bleihaltigem Lot Hände waschen.</translation>
    </message>
    <message>
        <source>Let solvent dry completely before heat or power.</source>
        <translation>Lösemittel vor Hitze oder Strom ganz trocknen lassen.</translation>
    </message>
    <message>
        <source>Work grounded against electrostatic discharge (IEC 61340-5-1).</source>
        <translation>Gegen elektrostatische Entladung geerdet arbeiten (IEC 61340-5-1).</translation>
    </message>
    <message>
        <source>Heat settings are starting points of one bench: start low; the paste&apos;s and the part&apos;s data sheets come first; mind underfilled chips, plastic connectors and batteries near the heat.</source>
        <translation>Temperaturen sind Anhaltswerte eines Arbeitsplatzes: niedrig beginnen; Datenblätter von Paste und Bauteil gehen vor; auf unterfüllte Chips, Kunststoffstecker und Akkus nahe der Hitze achten.</translation>
    </message>
    <message>
        <source>the mating part and the strip its plug sweeps would tear the wire</source>
        <translation>das Gegenstück und der Streifen, den der Stecker überstreicht, würden den Draht abreißen</translation>
    </message>
    <message>
        <source>the lid must close, and the wall would cut the enamel</source>
        <translation>der Deckel muss schließen, und die Wand würde den Lack durchschneiden</translation>
    </message>
    <message>
        <source>a wire under a cell presses into it, and the next battery swap would tear it</source>
        <translation>ein Draht unter einer Zelle drückt sich hinein, und der nächste Akkutausch risse ihn ab</translation>
    </message>
    <message>
        <source>head and washer crush the wire</source>
        <translation>Kopf und Scheibe quetschen den Draht</translation>
    </message>
    <message>
        <source>copper near an antenna detunes it</source>
        <translation>Kupfer nahe einer Antenne verstimmt sie</translation>
    </message>
    <message>
        <source>solid wire breaks where the board bends</source>
        <translation>massiver Draht bricht, wo die Platine sich biegt</translation>
    </message>
    <message>
        <source>fixing the wire there brings heat and UV near the part</source>
        <translation>den Draht dort zu fixieren bringt Hitze und UV nahe ans Bauteil</translation>
    </message>
    <message>
        <source>the wire runs on the board, not over bodies</source>
        <translation>der Draht läuft auf der Platine, nicht über Körper</translation>
    </message>
    <message>
        <source>no such file</source>
        <translation>keine solche Datei</translation>
    </message>
    <message>
        <source>is not a regular file</source>
        <translation>ist keine gewöhnliche Datei</translation>
    </message>
    <message>
        <source>cannot be read: {}</source>
        <translation>nicht lesbar: {}</translation>
    </message>
    <message>
        <source>file is too large</source>
        <translation>Datei ist zu groß</translation>
    </message>
    <message>
        <source>cannot be made: {}</source>
        <translation>lässt sich nicht anlegen: {}</translation>
    </message>
    <message>
        <source>at most {} bytes</source>
        <translation>höchstens {} Bytes</translation>
    </message>
    <message>
        <source>wrong kind of value</source>
        <translation>falsche Art von Wert</translation>
    </message>
    <message>
        <source>another kind of file</source>
        <translation>andere Art von Datei</translation>
    </message>
    <message>
        <source>written by a newer Netmend</source>
        <translation>von einem neueren Netmend geschrieben</translation>
    </message>
    <message>
        <source>unknown version</source>
        <translation>unbekannte Version</translation>
    </message>
    <message>
        <source>unknown key</source>
        <translation>unbekannter Schlüssel</translation>
    </message>
    <message>
        <source>missing</source>
        <translation>fehlt</translation>
    </message>
    <message>
        <source>a value</source>
        <translation>ein Wert</translation>
    </message>
    <message>
        <source>a list</source>
        <translation>eine Liste</translation>
    </message>
    <message>
        <source>an object</source>
        <translation>ein Objekt</translation>
    </message>
    <message>
        <source>a text</source>
        <translation>ein Text</translation>
    </message>
    <message>
        <source>true or false</source>
        <translation>true oder false</translation>
    </message>
    <message>
        <source>a number</source>
        <translation>eine Zahl</translation>
    </message>
    <message>
        <source>number out of range</source>
        <translation>Zahl außerhalb des Bereichs</translation>
    </message>
    <message>
        <source>a whole number from 0 on</source>
        <translation>eine ganze Zahl ab 0</translation>
    </message>
    <message>
        <source>no source is given</source>
        <translation>keine Quelle angegeben</translation>
    </message>
    <message>
        <source>where the figures come from</source>
        <translation>woher die Zahlen stammen</translation>
    </message>
    <message>
        <source>the name stands twice in one object</source>
        <translation>der Name steht zweimal in einem Objekt</translation>
    </message>
    <message>
        <source>is not valid JSON</source>
        <translation>ist kein gültiges JSON</translation>
    </message>
    <message>
        <source>holds too much</source>
        <translation>enthält zu viel</translation>
    </message>
    <message>
        <source>is nested too deeply</source>
        <translation>ist zu tief verschachtelt</translation>
    </message>
    <message>
        <source>is too large</source>
        <translation>ist zu groß</translation>
    </message>
    <message>
        <source>is empty</source>
        <translation>ist leer</translation>
    </message>
    <message>
        <source>line too long</source>
        <translation>Zeile zu lang</translation>
    </message>
    <message>
        <source>not text in UTF-8</source>
        <translation>kein Text in UTF-8</translation>
    </message>
    <message>
        <source>unknown mode</source>
        <translation>unbekannte Messart</translation>
    </message>
    <message>
        <source>diode, diode reversed, ohms, milliohms, continuity, volts, drop under current or temperature</source>
        <translation>diode, diode reversed, ohms, milliohms, continuity, volts, drop under current oder temperature</translation>
    </message>
    <message>
        <source>no point is due: name one before the value</source>
        <translation>kein Punkt ist dran: einen vor dem Wert nennen</translation>
    </message>
    <message>
        <source>nothing to take back</source>
        <translation>nichts zurückzunehmen</translation>
    </message>
    <message>
        <source>no point is due that could be skipped</source>
        <translation>kein Punkt ist dran, der zu überspringen wäre</translation>
    </message>
    <message>
        <source>this is the first point</source>
        <translation>das ist der erste Punkt</translation>
    </message>
    <message>
        <source>the file is empty</source>
        <translation>die Datei ist leer</translation>
    </message>
    <message>
        <source>a value in {} or OL, for {}</source>
        <translation>ein Wert in {} oder OL, für {}</translation>
    </message>
    <message>
        <source>too long for a value</source>
        <translation>zu lang für einen Wert</translation>
    </message>
    <message>
        <source>no value</source>
        <translation>kein Wert</translation>
    </message>
    <message>
        <source>a thermometer shows no OL</source>
        <translation>ein Thermometer zeigt kein OL</translation>
    </message>
    <message>
        <source>not a value</source>
        <translation>kein Wert</translation>
    </message>
    <message>
        <source>a unit of another mode</source>
        <translation>Einheit einer anderen Messart</translation>
    </message>
    <message>
        <source>no meter shows that in this mode (it means {})</source>
        <translation>kein Messgerät zeigt das in dieser Messart (es bedeutet {})</translation>
    </message>
    <message>
        <source>no such pin on this board</source>
        <translation>kein solcher Anschluss auf dieser Platine</translation>
    </message>
    <message>
        <source>for example J4.11</source>
        <translation>zum Beispiel J4.11</translation>
    </message>
    <message>
        <source>pin label is not unique on this board</source>
        <translation>Anschlussname ist auf dieser Platine nicht eindeutig</translation>
    </message>
    <message>
        <source>a label that stands once</source>
        <translation>ein Name, der einmal vorkommt</translation>
    </message>
    <message>
        <source>no such net on this board</source>
        <translation>kein solches Netz auf dieser Platine</translation>
    </message>
    <message>
        <source>a name that board summary shows</source>
        <translation>ein Name, den board summary zeigt</translation>
    </message>
    <message>
        <source>net name is not unique on this board</source>
        <translation>Netzname ist auf dieser Platine nicht eindeutig</translation>
    </message>
    <message>
        <source>a name that stands once</source>
        <translation>ein Name, der einmal vorkommt</translation>
    </message>
    <message>
        <source>not a reading</source>
        <translation>keine Messung</translation>
    </message>
    <message>
        <source>[MODE] POINT [to POINT] VALUE, for example &quot;J4.7 OL&quot; or &quot;continuity J4.7 to C23.1 0.4&quot;</source>
        <translation>[MESSART] PUNKT [to PUNKT] WERT, zum Beispiel „J4.7 OL“ oder „continuity J4.7 to C23.1 0.4“</translation>
    </message>
    <message>
        <source>no such meter profile</source>
        <translation>kein solches Messgeräteprofil</translation>
    </message>
    <message>
        <source>an id of that file</source>
        <translation>eine Kennung dieser Datei</translation>
    </message>
    <message>
        <source>no line was named</source>
        <translation>keine Leitung genannt</translation>
    </message>
    <message>
        <source>neither net nor pin</source>
        <translation>weder Netz noch Anschluss</translation>
    </message>
    <message>
        <source>one of them</source>
        <translation>eines davon</translation>
    </message>
    <message>
        <source>is the walk of a faulty board and cannot say what a good one reads</source>
        <translation>ist der Rundgang einer defekten Platine und sagt nicht, was eine gute zeigt</translation>
    </message>
    <message>
        <source>no job is open</source>
        <translation>kein Auftrag offen</translation>
    </message>
    <message>
        <source>the reading before is still being weighed</source>
        <translation>die Messung davor wird noch gewichtet</translation>
    </message>
    <message>
        <source>no probe is due</source>
        <translation>keine Messung ist dran</translation>
    </message>
    <message>
        <source>no such pin, and no place of this line</source>
        <translation>kein solcher Anschluss und keine Stelle dieser Leitung</translation>
    </message>
    <message>
        <source>a pin such as J4.11, or a place as the next probe names it</source>
        <translation>ein Anschluss wie J4.11 oder eine Stelle, wie die nächste Messung sie nennt</translation>
    </message>
    <message>
        <source>not kept</source>
        <translation>nicht gespeichert</translation>
    </message>
    <message>
        <source>the job could not be booked in</source>
        <translation>der Auftrag ließ sich nicht annehmen</translation>
    </message>
    <message>
        <source>nothing was typed</source>
        <translation>nichts eingegeben</translation>
    </message>
    <message>
        <source>how many pins?</source>
        <translation>wie viele Anschlüsse?</translation>
    </message>
    <message>
        <source>how many rows?</source>
        <translation>wie viele Reihen?</translation>
    </message>
    <message>
        <source>how many pins has it?</source>
        <translation>wie viele Anschlüsse hat er?</translation>
    </message>
    <message>
        <source>not understood</source>
        <translation>nicht verstanden</translation>
    </message>
    <message>
        <source>for example J4, 40 pins, two rows</source>
        <translation>zum Beispiel J4, 40 Pins, zwei Reihen</translation>
    </message>
    <message>
        <source>reading</source>
        <translation>Lesen</translation>
    </message>
    <message>
        <source>Contacts of copper</source>
        <translation>Kupferkontakte</translation>
    </message>
    <message>
        <source>the written sheet could not be read again</source>
        <translation>das geschriebene Blatt ließ sich nicht wieder lesen</translation>
    </message>
    <message>
        <source>the printer takes no page</source>
        <translation>der Drucker nimmt keine Seite an</translation>
    </message>
    <message>
        <source>the printer did not take the last page</source>
        <translation>der Drucker nahm die letzte Seite nicht an</translation>
    </message>
    <message>
        <source>is a picture that cannot be read to its end</source>
        <translation>ist ein Bild, das sich nicht zu Ende lesen lässt</translation>
    </message>
    <message>
        <source>PNG or JPEG</source>
        <translation>PNG oder JPEG</translation>
    </message>
    <message>
        <source>is no picture that a job can keep</source>
        <translation>ist kein Bild, das ein Auftrag aufnimmt</translation>
    </message>
    <message>
        <source>the PDF could not be started</source>
        <translation>das PDF ließ sich nicht beginnen</translation>
    </message>
    <message>
        <source>the job holds too much text for a sheet</source>
        <translation>der Auftrag hat zu viel Text für ein Blatt</translation>
    </message>
    <message>
        <source>at most 500 pages</source>
        <translation>höchstens 500 Seiten</translation>
    </message>
    <message>
        <source>the sheet would be too long</source>
        <translation>das Blatt würde zu lang</translation>
    </message>
    <message>
        <source>a whole PNG or JPEG picture</source>
        <translation>ein ganzes PNG- oder JPEG-Bild</translation>
    </message>
    <message>
        <source>a repair needs its target</source>
        <translation>eine Reparatur braucht ihr Ziel</translation>
    </message>
    <message>
        <source>a part, joint, place or track</source>
        <translation>ein Bauteil, eine Lötstelle, ein Ort oder eine Leiterbahn</translation>
    </message>
    <message>
        <source>a board is given up only with a reason</source>
        <translation>eine Platine wird nur mit Grund aufgegeben</translation>
    </message>
    <message>
        <source>why the repair does not pay</source>
        <translation>warum sich die Reparatur nicht lohnt</translation>
    </message>
    <message>
        <source>amount is too large</source>
        <translation>Betrag ist zu groß</translation>
    </message>
    <message>
        <source>less than 10^12</source>
        <translation>unter 10^12</translation>
    </message>
    <message>
        <source>not an amount</source>
        <translation>kein Betrag</translation>
    </message>
    <message>
        <source>a number such as 12.50, with at most four places</source>
        <translation>eine Zahl wie 12.50 mit höchstens vier Nachkommastellen</translation>
    </message>
    <message>
        <source>job book: {}</source>
        <translation>Auftragsbuch: {}</translation>
    </message>
    <message>
        <source>job book holds a damaged entry: {}</source>
        <translation>Auftragsbuch enthält einen beschädigten Eintrag: {}</translation>
    </message>
    <message>
        <source>no such job</source>
        <translation>kein solcher Auftrag</translation>
    </message>
    <message>
        <source>a job book&apos;s path cannot hold a quotation mark</source>
        <translation>der Pfad eines Auftragsbuchs darf kein Anführungszeichen enthalten</translation>
    </message>
    <message>
        <source>job book cannot be kept safely here: no write-ahead log</source>
        <translation>Auftragsbuch lässt sich hier nicht sicher führen: kein Write-Ahead-Log</translation>
    </message>
    <message>
        <source>a number that job list shows</source>
        <translation>eine Nummer, die job list zeigt</translation>
    </message>
    <message>
        <source>job number is already taken</source>
        <translation>Auftragsnummer ist vergeben</translation>
    </message>
    <message>
        <source>only the walk of a board marked good can be kept as known good</source>
        <translation>nur der Rundgang einer als gut markierten Platine wird als Gutmuster aufbewahrt</translation>
    </message>
    <message>
        <source>the board&apos;s edge is not known</source>
        <translation>der Platinenrand ist unbekannt</translation>
    </message>
    <message>
        <source>no UNITS are given; read as CUST 0, 0.0001 inch</source>
        <translation>keine UNITS angegeben; gelesen als CUST 0, 0,0001 Zoll</translation>
    </message>
    <message>
        <source>reading was stopped</source>
        <translation>das Lesen wurde angehalten</translation>
    </message>
    <message>
        <source>nothing comes from {}</source>
        <translation>von {} kommt nichts</translation>
    </message>
    <message>
        <source>{} is listened to</source>
        <translation>{} wird abgehört</translation>
    </message>
    <message>
        <source>the link was closed</source>
        <translation>die Verbindung wurde geschlossen</translation>
    </message>
    <message>
        <source>no value can be taken: {}</source>
        <translation>kein Wert zu übernehmen: {}</translation>
    </message>
    <message>
        <source>no value has come from the meter yet</source>
        <translation>vom Messgerät kam noch kein Wert</translation>
    </message>
    <message>
        <source>the meter is at {}, {} is wanted</source>
        <translation>das Messgerät steht auf {}, gebraucht wird {}</translation>
    </message>
    <message>
        <source>the meter sends {}, {} is wanted</source>
        <translation>das Messgerät sendet {}, gebraucht wird {}</translation>
    </message>
    <message>
        <source>nobody answers there</source>
        <translation>dort antwortet niemand</translation>
    </message>
    <message>
        <source>it was closed</source>
        <translation>sie wurde geschlossen</translation>
    </message>
    <message>
        <source>{} is asked who it is</source>
        <translation>{} wird gefragt, wer es ist</translation>
    </message>
    <message>
        <source>{} does not answer</source>
        <translation>{} antwortet nicht</translation>
    </message>
    <message>
        <source>{} reports {}</source>
        <translation>{} meldet {}</translation>
    </message>
    <message>
        <source>{} has no value (not a number)</source>
        <translation>{} hat keinen Wert (keine Zahl)</translation>
    </message>
    <message>
        <source>not the address of a meter</source>
        <translation>keine Adresse eines Messgeräts</translation>
    </message>
    <message>
        <source>not a port</source>
        <translation>kein Port</translation>
    </message>
    <message>
        <source>1 to 65535</source>
        <translation>1 bis 65535</translation>
    </message>
    <message>
        <source>not a baud rate</source>
        <translation>keine Baudrate</translation>
    </message>
    <message>
        <source>50 to 4000000</source>
        <translation>50 bis 4000000</translation>
    </message>
    <message>
        <source>not the name or address of a host</source>
        <translation>kein Name und keine Adresse eines Rechners</translation>
    </message>
    <message>
        <source>not a serial port</source>
        <translation>keine serielle Schnittstelle</translation>
    </message>
    <message>
        <source>one short line</source>
        <translation>eine kurze Zeile</translation>
    </message>
    <message>
        <source>no such line pattern</source>
        <translation>kein solches Zeilenmuster</translation>
    </message>
    <message>
        <source>not the id of a line pattern</source>
        <translation>keine Kennung eines Zeilenmusters</translation>
    </message>
    <message>
        <source>small letters, digits and dashes</source>
        <translation>Kleinbuchstaben, Ziffern und Striche</translation>
    </message>
    <message>
        <source>is no field of a board</source>
        <translation>ist kein Feld einer Platine</translation>
    </message>
    <message>
        <source>a field is missing</source>
        <translation>ein Feld fehlt</translation>
    </message>
    <message>
        <source>is no Netmend board file</source>
        <translation>ist keine Platinendatei von Netmend</translation>
    </message>
    <message>
        <source>is no version</source>
        <translation>ist keine Version</translation>
    </message>
    <message>
        <source>written by a newer Netmend: format {}, this one reads up to {}</source>
        <translation>von einem neueren Netmend geschrieben: Format {}, dieses liest bis {}</translation>
    </message>
    <message>
        <source>an id is zero or too large</source>
        <translation>eine Kennung ist null oder zu groß</translation>
    </message>
    <message>
        <source>holds a text that is not UTF-8</source>
        <translation>enthält einen Text, der kein UTF-8 ist</translation>
    </message>
    <message>
        <source>is longer than a board can be</source>
        <translation>ist länger, als eine Platine sein kann</translation>
    </message>
    <message>
        <source>is no field of format 1</source>
        <translation>ist kein Feld des Formats 1</translation>
    </message>
    <message>
        <source>a connector has from 1 to 10000 pins</source>
        <translation>ein Stecker hat 1 bis 10000 Anschlüsse</translation>
    </message>
    <message>
        <source>the pins do not fill the rows</source>
        <translation>die Anschlüsse füllen die Reihen nicht</translation>
    </message>
    <message>
        <source>is no change</source>
        <translation>ist keine Änderung</translation>
    </message>
    <message>
        <source>is no kind of object</source>
        <translation>ist keine Art von Objekt</translation>
    </message>
    <message>
        <source>is no edit</source>
        <translation>ist keine Bearbeitung</translation>
    </message>
    <message>
        <source>is no journal of a board</source>
        <translation>ist kein Journal einer Platine</translation>
    </message>
    <message>
        <source>has no version</source>
        <translation>hat keine Version</translation>
    </message>
    <message>
        <source>belongs to another board or another state of it</source>
        <translation>gehört zu einer anderen Platine oder einem anderen Stand</translation>
    </message>
    <message>
        <source>the journal cannot be written any more</source>
        <translation>das Journal lässt sich nicht mehr schreiben</translation>
    </message>
    <message>
        <source>the journal is full: save the board</source>
        <translation>das Journal ist voll: Platine sichern</translation>
    </message>
    <message>
        <source>is open in another program</source>
        <translation>ist in einem anderen Programm offen</translation>
    </message>
    <message>
        <source>is not an object</source>
        <translation>ist kein Objekt</translation>
    </message>
    <message>
        <source>is not a list</source>
        <translation>ist keine Liste</translation>
    </message>
    <message>
        <source>is not a text</source>
        <translation>ist kein Text</translation>
    </message>
    <message>
        <source>is neither true nor false</source>
        <translation>ist weder true noch false</translation>
    </message>
    <message>
        <source>is no length</source>
        <translation>ist keine Länge</translation>
    </message>
    <message>
        <source>is no pair</source>
        <translation>ist kein Paar</translation>
    </message>
    <message>
        <source>two lengths</source>
        <translation>zwei Längen</translation>
    </message>
    <message>
        <source>has an x without y</source>
        <translation>hat ein x ohne y</translation>
    </message>
    <message>
        <source>is no id</source>
        <translation>ist keine Kennung</translation>
    </message>
    <message>
        <source>a whole number from 1 on</source>
        <translation>eine ganze Zahl ab 1</translation>
    </message>
    <message>
        <source>is not a number</source>
        <translation>ist keine Zahl</translation>
    </message>
    <message>
        <source>names nothing</source>
        <translation>benennt nichts</translation>
    </message>
    <message>
        <source>an id</source>
        <translation>eine Kennung</translation>
    </message>
    <message>
        <source>has no origin, and neither has its object</source>
        <translation>hat keine Herkunft, und sein Objekt auch nicht</translation>
    </message>
    <message>
        <source>is none of the words for it</source>
        <translation>ist keines der Wörter dafür</translation>
    </message>
    <message>
        <source>is no field of this</source>
        <translation>ist kein Feld davon</translation>
    </message>
    <message>
        <source>a column stands twice in the header</source>
        <translation>eine Spalte steht zweimal im Kopf</translation>
    </message>
    <message>
        <source>each column once</source>
        <translation>jede Spalte einmal</translation>
    </message>
    <message>
        <source>unknown side</source>
        <translation>unbekannte Seite</translation>
    </message>
    <message>
        <source>top, bottom or both</source>
        <translation>top, bottom oder both</translation>
    </message>
    <message>
        <source>a row has no pin</source>
        <translation>eine Zeile hat keinen Anschluss</translation>
    </message>
    <message>
        <source>only one of x_mm and y_mm is given</source>
        <translation>nur eines von x_mm und y_mm ist angegeben</translation>
    </message>
    <message>
        <source>not a usable coordinate</source>
        <translation>keine brauchbare Koordinate</translation>
    </message>
    <message>
        <source>millimetres, at most 10000 either way</source>
        <translation>Millimeter, höchstens 10000 in jede Richtung</translation>
    </message>
    <message>
        <source>the table has no rows</source>
        <translation>die Tabelle hat keine Zeilen</translation>
    </message>
    <message>
        <source>a row has too many columns</source>
        <translation>eine Zeile hat zu viele Spalten</translation>
    </message>
    <message>
        <source>a row has too few columns</source>
        <translation>eine Zeile hat zu wenige Spalten</translation>
    </message>
    <message>
        <source>a quoted cell has no end</source>
        <translation>eine Zelle in Anführungszeichen hat kein Ende</translation>
    </message>
    <message>
        <source>text follows a quoted cell</source>
        <translation>hinter einer Zelle in Anführungszeichen folgt Text</translation>
    </message>
    <message>
        <source>the separator or the end of the row</source>
        <translation>das Trennzeichen oder das Zeilenende</translation>
    </message>
    <message>
        <source>pin {} stands at {} already</source>
        <translation>Anschluss {} steht schon bei {}</translation>
    </message>
    <message>
        <source>each pin once, or a place for each of its pads</source>
        <translation>jeder Anschluss einmal, oder ein Ort für jede seiner Lötflächen</translation>
    </message>
    <message>
        <source>one net a pin</source>
        <translation>ein Netz je Anschluss</translation>
    </message>
    <message>
        <source>unknown board format</source>
        <translation>unbekanntes Platinenformat</translation>
    </message>
    <message>
        <source>not a board file of a known format</source>
        <translation>keine Platinendatei eines bekannten Formats</translation>
    </message>
    <message>
        <source>is UTF-16 text</source>
        <translation>ist Text in UTF-16</translation>
    </message>
    <message>
        <source>text in UTF-8</source>
        <translation>Text in UTF-8</translation>
    </message>
    <message>
        <source>is a binary file</source>
        <translation>ist eine Binärdatei</translation>
    </message>
    <message>
        <source>is not UTF-8 text</source>
        <translation>ist kein Text in UTF-8</translation>
    </message>
    <message>
        <source>a record continues none before it</source>
        <translation>ein Datensatz setzt keinen davor fort</translation>
    </message>
    <message>
        <source>not a record of this format</source>
        <translation>kein Datensatz dieses Formats</translation>
    </message>
    <message>
        <source>a three-digit code, P or C</source>
        <translation>ein dreistelliger Code, P oder C</translation>
    </message>
    <message>
        <source>unknown units</source>
        <translation>unbekannte Einheiten</translation>
    </message>
    <message>
        <source>the units are given twice and differ</source>
        <translation>die Einheiten sind zweimal und verschieden angegeben</translation>
    </message>
    <message>
        <source>the file has no end</source>
        <translation>die Datei hat kein Ende</translation>
    </message>
    <message>
        <source>a record 999 after the last one</source>
        <translation>ein Datensatz 999 nach dem letzten</translation>
    </message>
    <message>
        <source>a hole without a size</source>
        <translation>eine Bohrung ohne Größe</translation>
    </message>
    <message>
        <source>an access side without number</source>
        <translation>eine Zugangsseite ohne Nummer</translation>
    </message>
    <message>
        <source>a record without place</source>
        <translation>ein Datensatz ohne Ort</translation>
    </message>
    <message>
        <source>X and Y in columns 42 to 57</source>
        <translation>X und Y in den Spalten 42 bis 57</translation>
    </message>
    <message>
        <source>a record is cut short</source>
        <translation>ein Datensatz ist abgeschnitten</translation>
    </message>
    <message>
        <source>at least 57 columns</source>
        <translation>mindestens 57 Spalten</translation>
    </message>
    <message>
        <source>not a coordinate</source>
        <translation>keine Koordinate</translation>
    </message>
    <message>
        <source>X and Y with digits</source>
        <translation>X und Y mit Ziffern</translation>
    </message>
    <message>
        <source>the first coordinate is not complete</source>
        <translation>die erste Koordinate ist unvollständig</translation>
    </message>
    <message>
        <source>a board file too old to be read</source>
        <translation>eine Platinendatei, die zu alt zum Lesen ist</translation>
    </message>
    <message>
        <source>version 3 or later</source>
        <translation>Version 3 oder später</translation>
    </message>
    <message>
        <source>not a board file</source>
        <translation>keine Platinendatei</translation>
    </message>
    <message>
        <source>the file&apos;s version is missing</source>
        <translation>die Version der Datei fehlt</translation>
    </message>
    <message>
        <source>the file declares no copper layers</source>
        <translation>die Datei erklärt keine Kupferlagen</translation>
    </message>
    <message>
        <source>a track lacks start, mid or end</source>
        <translation>einer Leiterbahn fehlt Anfang, Mitte oder Ende</translation>
    </message>
    <message>
        <source>a track is on no layer</source>
        <translation>eine Leiterbahn liegt auf keiner Lage</translation>
    </message>
    <message>
        <source>a track has no width</source>
        <translation>eine Leiterbahn hat keine Breite</translation>
    </message>
    <message>
        <source>more than 0 mm</source>
        <translation>mehr als 0 mm</translation>
    </message>
    <message>
        <source>a via has no place</source>
        <translation>ein Via hat keinen Ort</translation>
    </message>
    <message>
        <source>a via has no size</source>
        <translation>ein Via hat keine Größe</translation>
    </message>
    <message>
        <source>a via&apos;s drill is negative</source>
        <translation>die Bohrung eines Vias ist negativ</translation>
    </message>
    <message>
        <source>a quoted text has no end</source>
        <translation>ein Text in Anführungszeichen hat kein Ende</translation>
    </message>
    <message>
        <source>the file ends inside a list</source>
        <translation>die Datei endet mitten in einer Liste</translation>
    </message>
    <message>
        <source>a list is closed that was never opened</source>
        <translation>eine Liste wird geschlossen, die nie geöffnet wurde</translation>
    </message>
    <message>
        <source>lists are nested too deeply</source>
        <translation>Listen sind zu tief verschachtelt</translation>
    </message>
    <message>
        <source>a value is missing</source>
        <translation>ein Wert fehlt</translation>
    </message>
    <message>
        <source>a word or a number</source>
        <translation>ein Wort oder eine Zahl</translation>
    </message>
    <message>
        <source>a number is missing</source>
        <translation>eine Zahl fehlt</translation>
    </message>
    <message>
        <source>not a number</source>
        <translation>keine Zahl</translation>
    </message>
    <message>
        <source>a length is out of range</source>
        <translation>eine Länge liegt außerhalb des Bereichs</translation>
    </message>
    <message>
        <source>at most 10000 mm either way</source>
        <translation>höchstens 10000 mm in jede Richtung</translation>
    </message>
    <message>
        <source>not a usable number</source>
        <translation>keine brauchbare Zahl</translation>
    </message>
    <message>
        <source>text follows the end of the board</source>
        <translation>hinter dem Ende der Platine folgt Text</translation>
    </message>
    <message>
        <source>a custom pad has too many primitives</source>
        <translation>eine freie Lötfläche hat zu viele Formen</translation>
    </message>
    <message>
        <source>the board&apos;s edge has too many corners</source>
        <translation>der Platinenrand hat zu viele Ecken</translation>
    </message>
    <message>
        <source>an angle is not a number</source>
        <translation>ein Winkel ist keine Zahl</translation>
    </message>
    <message>
        <source>a text lacks its kind</source>
        <translation>einem Text fehlt die Art</translation>
    </message>
    <message>
        <source>a footprint has a pad before its place</source>
        <translation>ein Footprint hat eine Lötfläche vor seinem Ort</translation>
    </message>
    <message>
        <source>a footprint has no place</source>
        <translation>ein Footprint hat keinen Ort</translation>
    </message>
    <message>
        <source>a drawn shape lacks points</source>
        <translation>einer gezeichneten Form fehlen Punkte</translation>
    </message>
    <message>
        <source>a drill is not a number</source>
        <translation>eine Bohrung ist keine Zahl</translation>
    </message>
    <message>
        <source>a drill is negative</source>
        <translation>eine Bohrung ist negativ</translation>
    </message>
    <message>
        <source>a custom pad has no copper</source>
        <translation>eine freie Lötfläche hat kein Kupfer</translation>
    </message>
    <message>
        <source>an unknown pad shape</source>
        <translation>eine unbekannte Form einer Lötfläche</translation>
    </message>
    <message>
        <source>a pad has no size</source>
        <translation>eine Lötfläche hat keine Größe</translation>
    </message>
    <message>
        <source>an unknown kind of pad</source>
        <translation>eine unbekannte Art von Lötfläche</translation>
    </message>
    <message>
        <source>a layer is declared twice</source>
        <translation>eine Lage ist zweimal erklärt</translation>
    </message>
    <message>
        <source>a net has no number</source>
        <translation>ein Netz hat keine Nummer</translation>
    </message>
    <message>
        <source>a net number is declared twice</source>
        <translation>eine Netznummer ist zweimal erklärt</translation>
    </message>
    <message>
        <source>a net is missing</source>
        <translation>ein Netz fehlt</translation>
    </message>
    <message>
        <source>a net&apos;s number or name</source>
        <translation>Nummer oder Name eines Netzes</translation>
    </message>
    <message>
        <source>an unknown net</source>
        <translation>ein unbekanntes Netz</translation>
    </message>
    <message>
        <source>the number of a net declared before</source>
        <translation>die Nummer eines vorher erklärten Netzes</translation>
    </message>
    <message>
        <source>the name of a net declared before</source>
        <translation>der Name eines vorher erklärten Netzes</translation>
    </message>
    <message>
        <source>job book was written by a newer Netmend</source>
        <translation>Auftragsbuch ist von einem neueren Netmend geschrieben</translation>
    </message>
    <message>
        <source>the job has no such repair action</source>
        <translation>der Auftrag hat keine solche Reparatur</translation>
    </message>
    <message>
        <source>the board is narrower than a wire with its margins</source>
        <translation>die Platine ist schmaler als ein Draht mit seinen Abständen</translation>
    </message>
    <message>
        <source>there is no area to search ways in</source>
        <translation>es gibt keine Fläche, um Wege zu suchen</translation>
    </message>
    <message>
        <source>the board is too wide to route on</source>
        <translation>die Platine ist zu breit, um Wege zu suchen</translation>
    </message>
    <message>
        <source>an outline without crossings</source>
        <translation>ein Umriss ohne Kreuzungen</translation>
    </message>
    <message>
        <source>an outline, or pads with coordinates</source>
        <translation>ein Umriss oder Lötflächen mit Koordinaten</translation>
    </message>
    <message>
        <source>the line has no such edge</source>
        <translation>die Leitung hat keinen solchen Abschnitt</translation>
    </message>
    <message>
        <source>picture size is out of range</source>
        <translation>Bildgröße liegt außerhalb des Bereichs</translation>
    </message>
    <message>
        <source>no memory for a picture of this size</source>
        <translation>kein Speicher für ein Bild dieser Größe</translation>
    </message>
    <message>
        <source>a line without end</source>
        <translation>eine Zeile ohne Ende</translation>
    </message>
    <message>
        <source>an unknown word of mode</source>
        <translation>ein unbekanntes Wort der Messart</translation>
    </message>
    <message>
        <source>a unit that does not go with the function</source>
        <translation>eine Einheit, die nicht zur Funktion passt</translation>
    </message>
    <message>
        <source>an unknown prefix of the unit</source>
        <translation>ein unbekannter Vorsatz der Einheit</translation>
    </message>
    <message>
        <source>not one value</source>
        <translation>nicht ein einzelner Wert</translation>
    </message>
    <message>
        <source>either a value or an overload</source>
        <translation>entweder ein Wert oder ein Überlauf</translation>
    </message>
    <message>
        <source>a number no meter measures</source>
        <translation>eine Zahl, die kein Messgerät misst</translation>
    </message>
    <message>
        <source>a line too long for a value</source>
        <translation>eine Zeile, zu lang für einen Wert</translation>
    </message>
    <message>
        <source>not a line of this meter</source>
        <translation>keine Zeile dieses Messgeräts</translation>
    </message>
    <message>
        <source>one such as &quot;{}&quot;</source>
        <translation>eine wie „{}“</translation>
    </message>
    <message>
        <source>a bracket is not closed</source>
        <translation>eine Klammer ist nicht geschlossen</translation>
    </message>
    <message>
        <source>unknown text behind a host</source>
        <translation>unbekannter Text hinter einem Rechnernamen</translation>
    </message>
    <message>
        <source>tcp:HOST or tcp:HOST:PORT</source>
        <translation>tcp:HOST oder tcp:HOST:PORT</translation>
    </message>
    <message>
        <source>tcp:HOST:PORT, serial:/dev/NAME or serial:/dev/NAME:PATTERN</source>
        <translation>tcp:HOST:PORT, serial:/dev/NAME oder serial:/dev/NAME:MUSTER</translation>
    </message>
    <message>
        <source>one number</source>
        <translation>eine Zahl</translation>
    </message>
    <message>
        <source>not a function</source>
        <translation>keine Funktion</translation>
    </message>
    <message>
        <source>not an identity</source>
        <translation>keine Kennung eines Geräts</translation>
    </message>
    <message>
        <source>&quot;{}&quot;, which nobody asked for</source>
        <translation>„{}“, wonach niemand gefragt hat</translation>
    </message>
    <message>
        <source>no answer but {} came from {}</source>
        <translation>keine Antwort, sondern {} kam von {}</translation>
    </message>
    <message>
        <source>{} is at {}, {} is wanted</source>
        <translation>{} steht auf {}, gebraucht wird {}</translation>
    </message>
    <message>
        <source>{}; it refused {}: {}</source>
        <translation>{}; es lehnte {} ab: {}</translation>
    </message>
    <message>
        <source>shares do not add up</source>
        <translation>Anteile ergeben nicht das Ganze</translation>
    </message>
    <message>
        <source>at least one</source>
        <translation>mindestens eines</translation>
    </message>
    <message>
        <source>an empty list</source>
        <translation>eine leere Liste</translation>
    </message>
    <message>
        <source>no wire</source>
        <translation>kein Draht</translation>
    </message>
    <message>
        <source>no step</source>
        <translation>kein Schritt</translation>
    </message>
    <message>
        <source>one for each</source>
        <translation>eines für jedes</translation>
    </message>
    <message>
        <source>column missing</source>
        <translation>Spalte fehlt</translation>
    </message>
    <message>
        <source>unknown column</source>
        <translation>unbekannte Spalte</translation>
    </message>
    <message>
        <source>column named twice</source>
        <translation>Spalte zweimal benannt</translation>
    </message>
    <message>
        <source>a quote is not closed</source>
        <translation>ein Anführungszeichen ist nicht geschlossen</translation>
    </message>
    <message>
        <source>too many rows</source>
        <translation>zu viele Zeilen</translation>
    </message>
    <message>
        <source>at most a million</source>
        <translation>höchstens eine Million</translation>
    </message>
    <message>
        <source>no point</source>
        <translation>kein Punkt</translation>
    </message>
    <message>
        <source>not a time</source>
        <translation>keine Zeit</translation>
    </message>
    <message>
        <source>reads {}</source>
        <translation>zeigt {}</translation>
    </message>
    <message>
        <source>more than a million to 1</source>
        <translation>mehr als eine Million zu 1</translation>
    </message>
    <message>
        <source>1 to more than a million</source>
        <translation>1 zu mehr als einer Million</translation>
    </message>
    <message>
        <source>less than once in a million</source>
        <translation>seltener als einmal in einer Million</translation>
    </message>
    <message>
        <source>entered by hand: {}</source>
        <translation>von Hand eingetragen: {}</translation>
    </message>
    <message>
        <source>no board measured; the default for {}: {}</source>
        <translation>keine Platine gemessen; Vorgabe für {}: {}</translation>
    </message>
    <message>
        <source>a pin with a junction</source>
        <translation>einen Anschluss mit Sperrschicht</translation>
    </message>
    <message>
        <source>a good board reads something as telling {}</source>
        <translation>eine gute Platine zeigt so etwas {}</translation>
    </message>
    <message>
        <source>odds of a fault here {}</source>
        <translation>Fehler hier {}</translation>
    </message>
    <message>
        <source>flagged for its odds, though the walk&apos;s rate allows only {}</source>
        <translation>gemeldet wegen der Wahrscheinlichkeit, obwohl die Quote des Rundgangs nur {} zulässt</translation>
    </message>
    <message>
        <source>flagged from {} on</source>
        <translation>gemeldet ab {}</translation>
    </message>
    <message>
        <source>press again: a missed contact reads OL too</source>
        <translation>nochmals andrücken: auch verfehlter Kontakt zeigt OL</translation>
    </message>
    <message>
        <source>it was still rising: wait until it has settled</source>
        <translation>stieg noch: warten, bis der Wert steht</translation>
    </message>
    <message>
        <source>no good board was measured here in this mode and condition, and nobody entered what to expect</source>
        <translation>hier wurde in dieser Messart und diesem Zustand keine gute Platine gemessen, und ein Soll ist nicht eingetragen</translation>
    </message>
    <message>
        <source>no rule in the data for readings in {}</source>
        <translation>keine Regel in den Daten für die Messart {}</translation>
    </message>
    <message>
        <source>anything is possible</source>
        <translation>alles möglich</translation>
    </message>
    <message>
        <source>OL is expected</source>
        <translation>Soll OL</translation>
    </message>
    <message>
        <source>as computed from what is behind the pins</source>
        <translation>wie aus dem berechnet, was hinter den Anschlüssen liegt</translation>
    </message>
    <message>
        <source>open: {}</source>
        <translation>offen: {}</translation>
    </message>
    <message>
        <source>no pin</source>
        <translation>kein Anschluss</translation>
    </message>
    <message>
        <source>the line is sound</source>
        <translation>die Leitung ist in Ordnung</translation>
    </message>
    <message>
        <source>none of these</source>
        <translation>nichts davon</translation>
    </message>
    <message>
        <source>short to ground somewhere on the line</source>
        <translation>Kurzschluss nach Masse irgendwo auf der Leitung</translation>
    </message>
    <message>
        <source>joint of {}</source>
        <translation>Lötstelle {}</translation>
    </message>
    <message>
        <source>joint of a pin</source>
        <translation>Lötstelle eines Anschlusses</translation>
    </message>
    <message>
        <source>track from {} to {}</source>
        <translation>Leiterbahn von {} nach {}</translation>
    </message>
    <message>
        <source>{} itself</source>
        <translation>{} selbst</translation>
    </message>
    <message>
        <source>a part in the line</source>
        <translation>ein Bauteil in der Leitung</translation>
    </message>
    <message>
        <source>unknown way to {}</source>
        <translation>unbekannter Weg zu {}</translation>
    </message>
    <message>
        <source>dead pin {} (inside the part, copper sound)</source>
        <translation>toter Anschluss {} (im Bauteil, Kupfer in Ordnung)</translation>
    </message>
    <message>
        <source>unknown way between {} on one side and {} on the other</source>
        <translation>unbekannter Weg zwischen {} auf der einen und {} auf der anderen Seite</translation>
    </message>
    <message>
        <source>pad of {}</source>
        <translation>Lötfläche {}</translation>
    </message>
    <message>
        <source>continuity from {} to {}: {}</source>
        <translation>Durchgang von {} nach {}: {}</translation>
    </message>
    <message>
        <source>resistance from {} to {}: {}</source>
        <translation>Widerstand von {} nach {}: {}</translation>
    </message>
    <message>
        <source>diode mode at {}: {}; {}</source>
        <translation>Diodenmessung bei {}: {}; {}</translation>
    </message>
    <message>
        <source>diode mode at {} once more, lest the probe had slipped: {}; {}</source>
        <translation>Diodenmessung bei {} nochmals, falls die Prüfspitze abgerutscht war: {}; {}</translation>
    </message>
    <message>
        <source>no place of this line can be reached</source>
        <translation>keine Stelle dieser Leitung ist erreichbar</translation>
    </message>
    <message>
        <source>no reachable place would tell anything more</source>
        <translation>keine erreichbare Stelle würde mehr sagen</translation>
    </message>
    <message>
        <source>a known-good value is for a pin that is not on this line</source>
        <translation>ein Gutwert gehört zu einem Anschluss, der nicht auf dieser Leitung liegt</translation>
    </message>
    <message>
        <source>only one pin of this line is known: a break can not be placed; entering the pins that it leads to would make it possible</source>
        <translation>nur ein Anschluss dieser Leitung ist bekannt: ein Bruch lässt sich nicht eingrenzen; die Anschlüsse eintragen, zu denen sie führt, macht es möglich</translation>
    </message>
    <message>
        <source>the meter has no diode mode: only resistances are used</source>
        <translation>das Messgerät hat keine Diodenmessung: nur Widerstände werden verwendet</translation>
    </message>
    <message>
        <source>the value is not a number</source>
        <translation>der Wert ist keine Zahl</translation>
    </message>
    <message>
        <source>taken in another condition than the expected values hold for</source>
        <translation>in anderem Zustand gemessen, als das Soll gilt</translation>
    </message>
    <message>
        <source>still rising: take it again when it has settled</source>
        <translation>stieg noch: wiederholen, wenn der Wert steht</translation>
    </message>
    <message>
        <source>{} is not a place on this line</source>
        <translation>{} ist keine Stelle dieser Leitung</translation>
    </message>
    <message>
        <source>the other lead is at {}, neither on ground nor on this line</source>
        <translation>die andere Prüfspitze liegt auf {}, weder auf Masse noch auf dieser Leitung</translation>
    </message>
    <message>
        <source>diode mode from point to point is not used</source>
        <translation>Diodenmessung von Punkt zu Punkt wird nicht verwendet</translation>
    </message>
    <message>
        <source>the meter has no diode mode</source>
        <translation>das Messgerät hat keine Diodenmessung</translation>
    </message>
    <message>
        <source>a negative resistance</source>
        <translation>ein negativer Widerstand</translation>
    </message>
    <message>
        <source>{} to ground is not used</source>
        <translation>{} nach Masse wird nicht verwendet</translation>
    </message>
    <message>
        <source>readings of mode &quot;{}&quot; are not used</source>
        <translation>Messungen der Art „{}“ werden nicht verwendet</translation>
    </message>
    <message>
        <source>break</source>
        <translation>Bruch</translation>
    </message>
    <message>
        <source>break, {}</source>
        <translation>Bruch, {}</translation>
    </message>
    <message>
        <source>or here, {}</source>
        <translation>oder hier, {}</translation>
    </message>
    <message>
        <source>part {}</source>
        <translation>Bauteil {}</translation>
    </message>
    <message>
        <source>without reference</source>
        <translation>ohne Bezeichner</translation>
    </message>
    <message>
        <source>edge of the board</source>
        <translation>Platinenrand</translation>
    </message>
    <message>
        <source>off the board</source>
        <translation>außerhalb der Platine</translation>
    </message>
    <message>
        <source>on the top side</source>
        <translation>auf der Oberseite</translation>
    </message>
    <message>
        <source>on the bottom side</source>
        <translation>auf der Unterseite</translation>
    </message>
    <message>
        <source>from {}</source>
        <translation>von {}</translation>
    </message>
    <message>
        <source>to {}</source>
        <translation>nach {}</translation>
    </message>
    <message>
        <source>from {} to {}</source>
        <translation>von {} nach {}</translation>
    </message>
    <message>
        <source>another way round</source>
        <translation>anders herum</translation>
    </message>
    <message>
        <source>the best by its score</source>
        <translation>der beste nach Punkten</translation>
    </message>
    <message>
        <source>no further landing or way differs enough from these</source>
        <translation>keine weitere Lötstelle und kein weiterer Weg unterscheidet sich genug</translation>
    </message>
    <message>
        <source>one side of the break has no landing that can be reached; see what was left out, and why</source>
        <translation>eine Seite des Bruchs hat keine erreichbare Lötstelle; siehe, was ausgelassen wurde und warum</translation>
    </message>
    <message>
        <source>the two sides of the break have no landing on the same side of the board</source>
        <translation>die beiden Seiten des Bruchs haben keine Lötstelle auf derselben Platinenseite</translation>
    </message>
    <message>
        <source>every way is closed; in between lie {}</source>
        <translation>jeder Weg ist versperrt; dazwischen liegen {}</translation>
    </message>
    <message>
        <source>there is no line to bridge a break of</source>
        <translation>es gibt keine Leitung mit einem Bruch zu überbrücken</translation>
    </message>
    <message>
        <source>the break is in a solder joint: resolder it before you bridge it</source>
        <translation>der Bruch liegt in einer Lötstelle: vor dem Überbrücken nachlöten</translation>
    </message>
    <message>
        <source>the board&apos;s outline is not known: a box round everything drawn was used</source>
        <translation>der Platinenumriss ist unbekannt: ein Rechteck um alles Gezeichnete gilt</translation>
    </message>
    <message>
        <source>coupling capacitor: both of its sides are live, and the wrong one is easily taken</source>
        <translation>Koppelkondensator: beide Seiten führen Signal, die falsche ist leicht erwischt</translation>
    </message>
    <message>
        <source>its place on the board is not known</source>
        <translation>der Ort auf der Platine ist unbekannt</translation>
    </message>
    <message>
        <source>whether mask covers this via is not known</source>
        <translation>ob Lötstopplack dieses Via deckt, ist unbekannt</translation>
    </message>
    <message>
        <source>scrape the mask off this track</source>
        <translation>Lötstopplack von dieser Leiterbahn kratzen</translation>
    </message>
    <message>
        <source>landing {}</source>
        <translation>Lötstelle {}</translation>
    </message>
    <message>
        <source>under a lid</source>
        <translation>unter einem Deckel</translation>
    </message>
    <message>
        <source>under a part</source>
        <translation>unter einem Bauteil</translation>
    </message>
    <message>
        <source>under the lid {}</source>
        <translation>unter dem Deckel {}</translation>
    </message>
    <message>
        <source>under part {}</source>
        <translation>unter Bauteil {}</translation>
    </message>
    <message>
        <source>mask</source>
        <translation>Lack</translation>
    </message>
    <message>
        <source>mask has to be scraped off first</source>
        <translation>Lötstopplack erst abkratzen</translation>
    </message>
    <message>
        <source>small part</source>
        <translation>kleines Bauteil</translation>
    </message>
    <message>
        <source>small part: fix the wire within 2 mm of the joint before anything pulls on it</source>
        <translation>kleines Bauteil: Draht binnen 2 mm der Lötstelle fixieren, bevor etwas daran zieht</translation>
    </message>
    <message>
        <source>far side unknown</source>
        <translation>andere Seite unbekannt</translation>
    </message>
    <message>
        <source>may be a coupling capacitor</source>
        <translation>vielleicht ein Koppelkondensator</translation>
    </message>
    <message>
        <source>the capacitor&apos;s other side is not known: make sure which end is this one</source>
        <translation>die andere Seite des Kondensators ist unbekannt: sicherstellen, welches Ende dieses ist</translation>
    </message>
    <message>
        <source>bypass capacitor: take its live side, {}</source>
        <translation>Stützkondensator: die signalführende Seite nehmen, {}</translation>
    </message>
    <message>
        <source>coupling capacitor, taken as right: only this end, {}</source>
        <translation>Koppelkondensator, als richtig angenommen: nur dieses Ende, {}</translation>
    </message>
    <message>
        <source>the leg itself, not its pad: the joint between them is part of the break</source>
        <translation>der Anschluss selbst, nicht die Lötfläche: die Lötstelle dazwischen gehört zum Bruch</translation>
    </message>
    <message>
        <source>inside a keep-out, or walled in by one: {}</source>
        <translation>in einer Sperrzone oder von ihr eingeschlossen: {}</translation>
    </message>
    <message>
        <source>margin opened</source>
        <translation>Abstand geöffnet</translation>
    </message>
    <message>
        <source>length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>bends</source>
        <translation>Knicke</translation>
    </message>
    <message>
        <source>tight passage</source>
        <translation>enge Stelle</translation>
    </message>
    <message>
        <source>the way is straight between its landings</source>
        <translation>der Weg ist gerade zwischen den Lötstellen</translation>
    </message>
    <message>
        <source>passes bodies that are only guessed, look before you lay the wire: {}</source>
        <translation>führt an nur vermuteten Körpern vorbei, vor dem Verlegen nachsehen: {}</translation>
    </message>
    <message>
        <source>{} set aside: {}</source>
        <translation>{} übergangen: {}</translation>
    </message>
    <message>
        <source>the wire table is empty</source>
        <translation>die Drahttabelle ist leer</translation>
    </message>
    <message>
        <source>the current of the line is no number a wire could be chosen for</source>
        <translation>der Strom der Leitung ist keine Zahl, zu der ein Draht passt</translation>
    </message>
    <message>
        <source>thinner than {} because a landing is only {} wide</source>
        <translation>dünner als {}, weil eine Lötstelle nur {} breit ist</translation>
    </message>
    <message>
        <source>the wire is {} thick and the narrower landing {} wide: choose another landing if you can</source>
        <translation>der Draht ist {} dick und die schmalere Lötstelle {} breit: möglichst eine andere Lötstelle wählen</translation>
    </message>
    <message>
        <source>no edge is named as broken, so there is nothing to bridge</source>
        <translation>kein Abschnitt ist als gebrochen genannt, also gibt es nichts zu überbrücken</translation>
    </message>
    <message>
        <source>taking these edges out opens nothing: the line still hangs together another way</source>
        <translation>diese Abschnitte zu entfernen trennt nichts: die Leitung hängt anders herum noch zusammen</translation>
    </message>
    <message>
        <source>only one side of the break has a terminal: a wire would lead nowhere</source>
        <translation>nur eine Seite des Bruchs hat einen Anschluss: ein Draht führte ins Leere</translation>
    </message>
    <message>
        <source>the break parts the line into more than two pieces with terminals; bridge one gap after the other</source>
        <translation>der Bruch teilt die Leitung in mehr als zwei Stücke mit Anschlüssen; eine Lücke nach der anderen überbrücken</translation>
    </message>
    <message>
        <source>the board&apos;s outline crosses or touches itself, so that its inside is unclear</source>
        <translation>der Platinenumriss kreuzt oder berührt sich selbst, das Innere ist unklar</translation>
    </message>
    <message>
        <source>keep-outs lie all but on each other, so that the free board cannot be cut out between them</source>
        <translation>Sperrflächen liegen fast aufeinander, sodass sich die freie Platine dazwischen nicht ausschneiden lässt</translation>
    </message>
    <message>
        <source>no way can be found: nothing on the board has a place</source>
        <translation>kein Weg auffindbar: nichts auf der Platine hat einen Ort</translation>
    </message>
    <message>
        <source>no break leads the suspects, so there is nothing to bridge</source>
        <translation>kein Bruch führt die Verdachtsliste an, also gibt es nichts zu überbrücken</translation>
    </message>
    <message>
        <source>the copper of the suspected stretch is unknown, so its ends cannot be told</source>
        <translation>das Kupfer der verdächtigen Strecke ist unbekannt, ihre Enden auch</translation>
    </message>
    <message>
        <source>more readings</source>
        <translation>mehr Messungen</translation>
    </message>
    <message>
        <source>the track drawn</source>
        <translation>die gezeichnete Leiterbahn</translation>
    </message>
    <message>
        <source>as {}, on the same net</source>
        <translation>wie {}, gleiches Netz</translation>
    </message>
    <message>
        <source>what the work steps expect of the bridged line</source>
        <translation>was die Arbeitsschritte von der überbrückten Leitung erwarten</translation>
    </message>
    <message>
        <source>twice the wire&apos;s resistance, and what leads and meter may add</source>
        <translation>der doppelte Drahtwiderstand und was Prüfleitungen und Messgerät beitragen</translation>
    </message>
    <message>
        <source>repair under way</source>
        <translation>während der Reparatur</translation>
    </message>
    <message>
        <source>Job sheet </source>
        <translation>Auftragsblatt </translation>
    </message>
    <message>
        <source>Workshop copy</source>
        <translation>Werkstattexemplar</translation>
    </message>
    <message>
        <source>Customer&apos;s copy</source>
        <translation>Kundenexemplar</translation>
    </message>
    <message>
        <source>not stated</source>
        <translation>nicht angegeben</translation>
    </message>
    <message>
        <source>without number</source>
        <translation>ohne Nummer</translation>
    </message>
    <message>
        <source>Device and symptom</source>
        <translation>Gerät und Symptom</translation>
    </message>
    <message>
        <source>Device</source>
        <translation>Gerät</translation>
    </message>
    <message>
        <source>Serial number</source>
        <translation>Seriennummer</translation>
    </message>
    <message>
        <source>Customer</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>Reference</source>
        <translation>Zeichen</translation>
    </message>
    <message>
        <source>Booked in</source>
        <translation>Angenommen</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source> revision </source>
        <translation> Revision </translation>
    </message>
    <message>
        <source>Board</source>
        <translation>Platine</translation>
    </message>
    <message>
        <source>Symptom</source>
        <translation>Symptom</translation>
    </message>
    <message>
        <source>History</source>
        <translation>Vorgeschichte</translation>
    </message>
    <message>
        <source>As received</source>
        <translation>Zustand</translation>
    </message>
    <message>
        <source> (content %1)</source>
        <translation> (Inhalt %1)</translation>
    </message>
    <message>
        <source>Board file</source>
        <translation>Platinendatei</translation>
    </message>
    <message>
        <source>Job </source>
        <translation>Auftrag </translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>Points</source>
        <translation>Punkte</translation>
    </message>
    <message>
        <source>plugged: </source>
        <translation>gesteckt: </translation>
    </message>
    <message>
        <source>powered</source>
        <translation>unter Spannung</translation>
    </message>
    <message>
        <source>lifted: </source>
        <translation>abgehoben: </translation>
    </message>
    <message>
        <source> to </source>
        <translation> nach </translation>
    </message>
    <message>
        <source>, %1 A injected</source>
        <translation>, %1 A eingespeist</translation>
    </message>
    <message>
        <source>, rising</source>
        <translation>, steigt noch</translation>
    </message>
    <message>
        <source>not judged</source>
        <translation>nicht beurteilt</translation>
    </message>
    <message>
        <source>Point</source>
        <translation>Punkt</translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Gemessen</translation>
    </message>
    <message>
        <source>Expected</source>
        <translation>Soll</translation>
    </message>
    <message>
        <source>As found</source>
        <translation>Vorher</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Urteil</translation>
    </message>
    <message>
        <source>After</source>
        <translation>Nachher</translation>
    </message>
    <message>
        <source>Checks during the work</source>
        <translation>Prüfungen bei der Arbeit</translation>
    </message>
    <message>
        <source>Read</source>
        <translation>Gelesen</translation>
    </message>
    <message>
        <source>Chance</source>
        <translation>Chance</translation>
    </message>
    <message>
        <source>Suspect</source>
        <translation>Verdacht</translation>
    </message>
    <message>
        <source>by </source>
        <translation>von </translation>
    </message>
    <message>
        <source>meter </source>
        <translation>Messgerät </translation>
    </message>
    <message>
        <source>on </source>
        <translation>am </translation>
    </message>
    <message>
        <source>Readings: </source>
        <translation>Messungen: </translation>
    </message>
    <message>
        <source>Findings before and after</source>
        <translation>Befund vorher und nachher</translation>
    </message>
    <message>
        <source>Nothing has been read yet.</source>
        <translation>Noch nichts gemessen.</translation>
    </message>
    <message>
        <source>bar: expected; left mark: as found, right mark: after repair</source>
        <translation>Balken: Soll; linkes Zeichen: vorher, rechtes Zeichen: nach der Reparatur</translation>
    </message>
    <message>
        <source>bar: expected</source>
        <translation>Balken: Soll</translation>
    </message>
    <message>
        <source>Picture</source>
        <translation>Bild</translation>
    </message>
    <message>
        <source>line, on this side</source>
        <translation>Leitung, diese Seite</translation>
    </message>
    <message>
        <source>line, on another layer</source>
        <translation>Leitung, andere Lage</translation>
    </message>
    <message>
        <source>line, way not known</source>
        <translation>Leitung, Weg unbekannt</translation>
    </message>
    <message>
        <source>suspected stretch</source>
        <translation>verdächtige Strecke</translation>
    </message>
    <message>
        <source>jumper wire</source>
        <translation>Drahtbrücke</translation>
    </message>
    <message>
        <source>seen from the top</source>
        <translation>von oben gesehen</translation>
    </message>
    <message>
        <source>seen from the bottom</source>
        <translation>von unten gesehen</translation>
    </message>
    <message>
        <source>jumper %1</source>
        <translation>Drahtbrücke %1</translation>
    </message>
    <message>
        <source>Photos</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>photo %1</source>
        <translation>Foto %1</translation>
    </message>
    <message>
        <source>From </source>
        <translation>Von </translation>
    </message>
    <message>
        <source>Net</source>
        <translation>Netz</translation>
    </message>
    <message>
        <source>Wire</source>
        <translation>Draht</translation>
    </message>
    <message>
        <source>Way</source>
        <translation>Weg</translation>
    </message>
    <message>
        <source>%1 mm on the %2</source>
        <translation>%1 mm %2</translation>
    </message>
    <message>
        <source>Check: </source>
        <translation>Prüfen: </translation>
    </message>
    <message>
        <source>Expected: </source>
        <translation>Soll: </translation>
    </message>
    <message>
        <source>Note: </source>
        <translation>Notiz: </translation>
    </message>
    <message>
        <source>Proof: </source>
        <translation>Nachweis: </translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>Work %1: %2</source>
        <translation>Arbeit %1: %2</translation>
    </message>
    <message>
        <source>Why: </source>
        <translation>Grund: </translation>
    </message>
    <message>
        <source>Internal notes (not on the customer&apos;s copy)</source>
        <translation>Interne Notizen (nicht auf dem Kundenexemplar)</translation>
    </message>
    <message>
        <source>Date, technician&apos;s signature</source>
        <translation>Datum, Unterschrift Technik</translation>
    </message>
    <message>
        <source>Date, customer&apos;s signature: device received</source>
        <translation>Datum, Unterschrift Kunde: Gerät erhalten</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Quantity</source>
        <translation>Menge</translation>
    </message>
    <message>
        <source>Price</source>
        <translation>Preis</translation>
    </message>
    <message>
        <source>Amount </source>
        <translation>Betrag </translation>
    </message>
    <message>
        <source>Total</source>
        <translation>Summe</translation>
    </message>
    <message>
        <source>Charges</source>
        <translation>Kosten</translation>
    </message>
    <message>
        <source>No places are known on this board: %1 parts, %2 pins, %3 nets</source>
        <translation>Auf dieser Platine sind keine Orte bekannt: %1 Bauteile, %2 Anschlüsse, %3 Netze</translation>
    </message>
    <message>
        <source>{} (continued)</source>
        <translation>{} (Fortsetzung)</translation>
    </message>
    <message>
        <source>in range</source>
        <translation>im Bereich</translation>
    </message>
    <message>
        <source>open</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>short</source>
        <translation>Kurzschluss</translation>
    </message>
    <message>
        <source>low</source>
        <translation>zu niedrig</translation>
    </message>
    <message>
        <source>high</source>
        <translation>zu hoch</translation>
    </message>
    <message>
        <source>reads where OL is expected</source>
        <translation>Wert statt OL</translation>
    </message>
    <message>
        <source>nothing to compare</source>
        <translation>kein Vergleich</translation>
    </message>
    <message>
        <source>diode</source>
        <translation>Diodenmessung</translation>
    </message>
    <message>
        <source>diode reversed</source>
        <translation>Diodenmessung umgepolt</translation>
    </message>
    <message>
        <source>ohms</source>
        <translation>Widerstand</translation>
    </message>
    <message>
        <source>milliohms</source>
        <translation>Milliohm</translation>
    </message>
    <message>
        <source>continuity</source>
        <translation>Durchgang</translation>
    </message>
    <message>
        <source>volts</source>
        <translation>Spannung</translation>
    </message>
    <message>
        <source>drop under current</source>
        <translation>Spannungsabfall unter Strom</translation>
    </message>
    <message>
        <source>temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>booked in</source>
        <translation>angenommen</translation>
    </message>
    <message>
        <source>probing</source>
        <translation>in Messung</translation>
    </message>
    <message>
        <source>suspect found</source>
        <translation>Verdacht gefunden</translation>
    </message>
    <message>
        <source>repairing</source>
        <translation>in Reparatur</translation>
    </message>
    <message>
        <source>proving</source>
        <translation>im Nachweis</translation>
    </message>
    <message>
        <source>handed over</source>
        <translation>übergeben</translation>
    </message>
    <message>
        <source>returned unrepaired</source>
        <translation>unrepariert zurück</translation>
    </message>
    <message>
        <source>jumper</source>
        <translation>Drahtbrücke</translation>
    </message>
    <message>
        <source>resolder</source>
        <translation>nachlöten</translation>
    </message>
    <message>
        <source>remove part</source>
        <translation>Bauteil entfernen</translation>
    </message>
    <message>
        <source>replace part</source>
        <translation>Bauteil ersetzen</translation>
    </message>
    <message>
        <source>clean</source>
        <translation>reinigen</translation>
    </message>
    <message>
        <source>cut track</source>
        <translation>Leiterbahn trennen</translation>
    </message>
    <message>
        <source>not economic</source>
        <translation>unwirtschaftlich</translation>
    </message>
    <message>
        <source>connector</source>
        <translation>Stecker</translation>
    </message>
    <message>
        <source>shield wall</source>
        <translation>Schirmwand</translation>
    </message>
    <message>
        <source>battery</source>
        <translation>Akku</translation>
    </message>
    <message>
        <source>fastener</source>
        <translation>Verschraubung</translation>
    </message>
    <message>
        <source>antenna</source>
        <translation>Antenne</translation>
    </message>
    <message>
        <source>flex</source>
        <translation>Flex</translation>
    </message>
    <message>
        <source>heat-sensitive</source>
        <translation>wärmeempfindlich</translation>
    </message>
    <message>
        <source>tall part</source>
        <translation>hohes Bauteil</translation>
    </message>
    <message>
        <source>test pad</source>
        <translation>Prüfpunkt</translation>
    </message>
    <message>
        <source>part terminal</source>
        <translation>Bauteilanschluss</translation>
    </message>
    <message>
        <source>via</source>
        <translation>Via</translation>
    </message>
    <message>
        <source>tented via</source>
        <translation>abgedecktes Via</translation>
    </message>
    <message>
        <source>scraped track</source>
        <translation>freigekratzte Leiterbahn</translation>
    </message>
    <message>
        <source>connector pin</source>
        <translation>Steckerstift</translation>
    </message>
    <message>
        <source>top</source>
        <translation>oben</translation>
    </message>
    <message>
        <source>bottom</source>
        <translation>unten</translation>
    </message>
    <message>
        <source>four-wire ohms</source>
        <translation>Vierleiter-Widerstand</translation>
    </message>
    <message>
        <source>DC volts</source>
        <translation>Gleichspannung</translation>
    </message>
    <message>
        <source>other</source>
        <translation>andere Funktion</translation>
    </message>
    <message>
        <source>is of another version of the program</source>
        <translation>gehört zu einer anderen Fassung des Programms</translation>
    </message>
    <message>
        <source>the book has no such walk of a good board</source>
        <translation>das Buch hat keine solche Messung einer guten Platine</translation>
    </message>
    <message>
        <source>{} read {}; here {}: {}</source>
        <translation>{} zeigte {}; hier {}: {}</translation>
    </message>
    <message>
        <source>as likely as before</source>
        <translation>so wahrscheinlich wie zuvor</translation>
    </message>
    <message>
        <source>no reachable probe is worth its time (the best {})</source>
        <translation>keine erreichbare Messung ist ihre Zeit wert (die beste {})</translation>
    </message>
    <message>
        <source>probing on is worth its time</source>
        <translation>weiter zu messen ist die Zeit wert</translation>
    </message>
    <message>
        <source>the photo cannot be read, so it stays</source>
        <translation>das Foto lässt sich nicht lesen, also bleibt es</translation>
    </message>
    <message>
        <source>no board is open</source>
        <translation>keine Platine ist offen</translation>
    </message>
    <message>
        <source>there is no job book</source>
        <translation>hier ist kein Auftragsbuch</translation>
    </message>
    <message>
        <source>a job book; `netmend job new` makes one</source>
        <translation>ein Auftragsbuch; `netmend job new` legt eines an</translation>
    </message>
    <message>
        <source>is a folder</source>
        <translation>ist ein Ordner</translation>
    </message>
    <message>
        <source>is empty, and so no job book</source>
        <translation>ist leer und damit kein Auftragsbuch</translation>
    </message>
    <message>
        <source>is not a job book</source>
        <translation>ist kein Auftragsbuch</translation>
    </message>
    <message>
        <source>is a database, but not a job book</source>
        <translation>ist eine Datenbank, aber kein Auftragsbuch</translation>
    </message>
    <message>
        <source>the job book can only be read</source>
        <translation>das Auftragsbuch kann nur gelesen werden</translation>
    </message>
    <message>
        <source>a book, in a folder, that you may write</source>
        <translation>ein Buch in einem Ordner, beide beschreibbar</translation>
    </message>
    <message>
        <source>the disk is full, so nothing of this was kept</source>
        <translation>der Datenträger ist voll, hiervon wurde nichts behalten</translation>
    </message>
    <message>
        <source>some free space; then do it once more</source>
        <translation>etwas freien Platz; dann noch einmal</translation>
    </message>
    <message>
        <source>the job book is damaged</source>
        <translation>das Auftragsbuch ist beschädigt</translation>
    </message>
    <message>
        <source>a copy of the book from before; keep the damaged one, too</source>
        <translation>eine frühere Kopie des Buchs; auch das beschädigte aufheben</translation>
    </message>
    <message>
        <source>another program is writing into the job book</source>
        <translation>ein anderes Programm schreibt gerade ins Auftragsbuch</translation>
    </message>
    <message>
        <source>wait until it is done; then do it once more</source>
        <translation>warten, bis es fertig ist; dann noch einmal</translation>
    </message>
    <message>
        <source>the job book cannot be opened</source>
        <translation>das Auftragsbuch lässt sich nicht öffnen</translation>
    </message>
    <message>
        <source>a folder that is there and that you may write</source>
        <translation>einen vorhandenen, beschreibbaren Ordner</translation>
    </message>
    <message>
        <source>the disk of the job book cannot be read or written</source>
        <translation>der Datenträger des Auftragsbuchs lässt sich nicht lesen oder beschreiben</translation>
    </message>
    <message>
        <source>look after the disk; then do it once more</source>
        <translation>nach dem Datenträger sehen; dann noch einmal</translation>
    </message>
    <message>
        <source>is a photo of too many pixels</source>
        <translation>ist ein Foto mit zu vielen Bildpunkten</translation>
    </message>
    <message>
        <source>at most 250 megapixels</source>
        <translation>höchstens 250 Megapixel</translation>
    </message>
    <message>
        <source>is on this board already</source>
        <translation>ist schon auf dieser Platine</translation>
    </message>
    <message>
        <source>a reference that no part has yet</source>
        <translation>eine Bezeichnung, die noch kein Bauteil hat</translation>
    </message>
    <message>
        <source>hole of {}</source>
        <translation>Loch von {}</translation>
    </message>
    <message>
        <source>joint {}</source>
        <translation>Lötstelle {}</translation>
    </message>
    <message>
        <source>no way keeps clear of these holes and joints, sleeve the wire over them: {}</source>
        <translation>kein Weg hält Abstand von diesen Löchern und Lötstellen, den Draht darüber mit Schlauch führen: {}</translation>
    </message>
    <message>
        <source>runs over bare copper of other nets, its insulation must be whole there: {}</source>
        <translation>läuft über blankes Kupfer anderer Netze, dort muss seine Isolierung heil sein: {}</translation>
    </message>
    <message>
        <source>the broken copper together</source>
        <translation>das gebrochene Kupfer zusammen</translation>
    </message>
    <message>
        <source>at most 10 m either way</source>
        <translation>höchstens 10 m in jede Richtung</translation>
    </message>
    <message>
        <source>the board&apos;s edge is not closed in the file; it was closed by a straight line</source>
        <translation>der Platinenrand ist in der Datei offen; er wurde mit einer Geraden geschlossen</translation>
    </message>
    <message>
        <source>the board&apos;s edge was left out: {}</source>
        <translation>der Platinenrand wurde weggelassen: {}</translation>
    </message>
    <message>
        <source>the file has no records of conductors: what joins the points of a net is not known, and a net is not checked for breaks</source>
        <translation>die Datei hat keine Datensätze für Leiter: was die Punkte eines Netzes verbindet, ist unbekannt, und Netze werden nicht auf Unterbrechungen geprüft</translation>
    </message>
    <message>
        <source>there are no columns for part and pin</source>
        <translation>es gibt keine Spalten für Bauteil und Anschluss</translation>
    </message>
    <message>
        <source>a first row part,pin[,net[,x_mm,y_mm,side]], or rows like J4,1,GND</source>
        <translation>eine erste Zeile part,pin[,net[,x_mm,y_mm,side]] oder Zeilen wie J4,1,GND</translation>
    </message>
    <message>
        <source>the table is too long</source>
        <translation>die Tabelle ist zu lang</translation>
    </message>
    <message>
        <source>the table is too large</source>
        <translation>die Tabelle ist zu groß</translation>
    </message>
    <message>
        <source>half a letter in UTF-16 text</source>
        <translation>ein halber Buchstabe in UTF-16-Text</translation>
    </message>
    <message>
        <source>is no archive that can be read</source>
        <translation>ist kein Archiv, das sich lesen lässt</translation>
    </message>
    <message>
        <source>a ZIP archive</source>
        <translation>ein ZIP-Archiv</translation>
    </message>
    <message>
        <source>the archive has too many entries</source>
        <translation>das Archiv hat zu viele Einträge</translation>
    </message>
    <message>
        <source>without a size</source>
        <translation>ohne Größe</translation>
    </message>
    <message>
        <source>encrypted</source>
        <translation>verschlüsselt</translation>
    </message>
    <message>
        <source>damaged or packed in an unknown way</source>
        <translation>beschädigt oder auf unbekannte Weise gepackt</translation>
    </message>
    <message>
        <source>damaged</source>
        <translation>beschädigt</translation>
    </message>
    <message>
        <source>larger than the archive says</source>
        <translation>größer, als das Archiv sagt</translation>
    </message>
    <message>
        <source>shorter than the archive says</source>
        <translation>kürzer, als das Archiv sagt</translation>
    </message>
    <message>
        <source>there is no board file in this archive</source>
        <translation>in diesem Archiv ist keine Platinendatei</translation>
    </message>
    <message>
        <source>a board in one of the formats that can be read</source>
        <translation>eine Platine in einem der lesbaren Formate</translation>
    </message>
    <message>
        <source>there are several boards in this archive</source>
        <translation>in diesem Archiv sind mehrere Platinen</translation>
    </message>
    <message>
        <source>no such board in this archive</source>
        <translation>keine solche Platine in diesem Archiv</translation>
    </message>
    <message>
        <source>one of {}</source>
        <translation>eine von {}</translation>
    </message>
    <message>
        <source>read from the archive: {}</source>
        <translation>aus dem Archiv gelesen: {}</translation>
    </message>
    <message>
        <source>line {}, column {}</source>
        <translation>Zeile {}, Spalte {}</translation>
    </message>
    <message>
        <source>line {}</source>
        <translation>Zeile {}</translation>
    </message>
    <message>
        <source>{} {}</source>
        <translation>{} {}</translation>
    </message>
    <message>
        <source>{}, {}</source>
        <translation>{}, {}</translation>
    </message>
    <message>
        <source>{} (found {}; expected {})</source>
        <translation>{} (gefunden {}; erwartet {})</translation>
    </message>
    <message>
        <source>{} (found {})</source>
        <translation>{} (gefunden {})</translation>
    </message>
    <message>
        <source>{} (expected {})</source>
        <translation>{} (erwartet {})</translation>
    </message>
    <message>
        <source>{}: {}</source>
        <translation>{}: {}</translation>
    </message>
    <message>
        <source>{} and {}</source>
        <translation>{} und {}</translation>
    </message>
    <message>
        <source>{} or {}</source>
        <translation>{} oder {}</translation>
    </message>
    <message>
        <source>{} and {} more</source>
        <translation>{} und {} weitere</translation>
    </message>
    <message>
        <source>{} bytes</source>
        <translation>{} Bytes</translation>
    </message>
    <message>
        <source>version {}</source>
        <translation>Version {}</translation>
    </message>
    <message>
        <source>version 1 to {}</source>
        <translation>Version 1 bis {}</translation>
    </message>
    <message>
        <source>{} to {}</source>
        <translation>{} bis {}</translation>
    </message>
    <message>
        <source>format {}</source>
        <translation>Format {}</translation>
    </message>
    <message>
        <source>id {} is used twice</source>
        <translation>Kennung {} ist doppelt verwendet</translation>
    </message>
    <message>
        <source>a connector has from 1 to {} rows</source>
        <translation>ein Stecker hat 1 bis {} Reihen</translation>
    </message>
    <message>
        <source>{} pins in {} rows</source>
        <translation>{} Pins in {} Reihen</translation>
    </message>
    <message>
        <source>put and object, remove and id, or info</source>
        <translation>put und object, remove und id, oder info</translation>
    </message>
    <message>
        <source>{} columns</source>
        <translation>{} Spalten</translation>
    </message>
    <message>
        <source>D and four digits in columns 33 to 37</source>
        <translation>D und vier Ziffern in den Spalten 33 bis 37</translation>
    </message>
    <message>
        <source>A00 to A99</source>
        <translation>A00 bis A99</translation>
    </message>
    <message>
        <source>X and Y</source>
        <translation>X und Y</translation>
    </message>
    <message>
        <source>{} mm</source>
        <translation>{} mm</translation>
    </message>
    <message>
        <source>at most {} levels</source>
        <translation>höchstens {} Ebenen</translation>
    </message>
    <message>
        <source>millimetres</source>
        <translation>Millimeter</translation>
    </message>
    <message>
        <source>at most 1000</source>
        <translation>höchstens 1000</translation>
    </message>
    <message>
        <source>at most {}</source>
        <translation>höchstens {}</translation>
    </message>
    <message>
        <source>degrees</source>
        <translation>Grad</translation>
    </message>
    <message>
        <source>pin {} stands on another net at {}</source>
        <translation>Pin {} steht an {} an einem anderen Netz</translation>
    </message>
    <message>
        <source>byte 0x{}</source>
        <translation>Byte 0x{}</translation>
    </message>
    <message>
        <source>an edit holds a text that is not UTF-8</source>
        <translation>eine Änderung enthält einen Text, der kein UTF-8 ist</translation>
    </message>
    <message>
        <source>whole nanometres from -{} to {}</source>
        <translation>ganze Nanometer von -{} bis {}</translation>
    </message>
    <message>
        <source>a whole number from 0 to {}</source>
        <translation>eine ganze Zahl von 0 bis {}</translation>
    </message>
    <message>
        <source>{} nm</source>
        <translation>{} nm</translation>
    </message>
    <message>
        <source>is no fact with an origin of its own</source>
        <translation>ist keine Angabe mit eigener Herkunft</translation>
    </message>
    <message>
        <source>an unknown fact is left out</source>
        <translation>eine unbekannte Angabe wird weggelassen</translation>
    </message>
    <message>
        <source>mode given twice</source>
        <translation>Messart zweimal angegeben</translation>
    </message>
    <message>
        <source>each mode once</source>
        <translation>jede Messart einmal</translation>
    </message>
    <message>
        <source>ranges must ascend</source>
        <translation>Bereiche müssen aufsteigen</translation>
    </message>
    <message>
        <source>more than the range before</source>
        <translation>mehr als der Bereich davor</translation>
    </message>
    <message>
        <source>a mode needs a range</source>
        <translation>eine Messart braucht einen Bereich</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keiner</translation>
    </message>
    <message>
        <source>a meter needs an id</source>
        <translation>ein Messgerät braucht eine Kennung</translation>
    </message>
    <message>
        <source>a short word</source>
        <translation>ein kurzes Wort</translation>
    </message>
    <message>
        <source>two meters with one id</source>
        <translation>zwei Messgeräte mit einer Kennung</translation>
    </message>
    <message>
        <source>each id once</source>
        <translation>jede Kennung einmal</translation>
    </message>
    <message>
        <source>over_limit_share and all weights together 1</source>
        <translation>over_limit_share und alle Gewichte zusammen 1</translation>
    </message>
    <message>
        <source>kind given twice</source>
        <translation>Art zweimal angegeben</translation>
    </message>
    <message>
        <source>each kind once</source>
        <translation>jede Art einmal</translation>
    </message>
    <message>
        <source>an empty range</source>
        <translation>ein leerer Bereich</translation>
    </message>
    <message>
        <source>more than &quot;lowest&quot;</source>
        <translation>mehr als „lowest“</translation>
    </message>
    <message>
        <source>open, short, shift and anywhere together 1</source>
        <translation>open, short, shift und anywhere zusammen 1</translation>
    </message>
    <message>
        <source>a point needs a label or a pin</source>
        <translation>ein Punkt braucht eine Bezeichnung oder einen Pin</translation>
    </message>
    <message>
        <source>only OL can stand here</source>
        <translation>hier kann nur OL stehen</translation>
    </message>
    <message>
        <source>an empty interval</source>
        <translation>ein leeres Intervall</translation>
    </message>
    <message>
        <source>no header</source>
        <translation>keine Kopfzeile</translation>
    </message>
    <message>
        <source>a row of column names with at least point and value</source>
        <translation>eine Zeile mit Spaltennamen, mindestens point und value</translation>
    </message>
    <message>
        <source>unknown state of the specimen</source>
        <translation>unbekannter Zustand der Platine</translation>
    </message>
    <message>
        <source>good, faulty or unknown</source>
        <translation>good, faulty oder unknown</translation>
    </message>
    <message>
        <source>a mode such as diode or ohms</source>
        <translation>eine Messart wie diode oder ohms</translation>
    </message>
    <message>
        <source>point, value, mode, other, meter, by, time or settling</source>
        <translation>point, value, mode, other, meter, by, time oder settling</translation>
    </message>
    <message>
        <source>{} cells</source>
        <translation>{} Zellen</translation>
    </message>
    <message>
        <source>the name of a point such as J4.11</source>
        <translation>der Name eines Punktes wie J4.11</translation>
    </message>
    <message>
        <source>unknown word</source>
        <translation>unbekanntes Wort</translation>
    </message>
    <message>
        <source>settled, rising or unknown</source>
        <translation>settled, rising oder unknown</translation>
    </message>
    <message>
        <source>a time in UTC such as 2026-03-01T09:30:00Z</source>
        <translation>eine Zeit in UTC wie 2026-03-01T09:30:00Z</translation>
    </message>
    <message>
        <source>a sum of 1</source>
        <translation>eine Summe von 1</translation>
    </message>
    <message>
        <source>leaves nothing for faults</source>
        <translation>lässt nichts für Fehler übrig</translation>
    </message>
    <message>
        <source>sound and none of these together below 1</source>
        <translation>sound und none of these zusammen unter 1</translation>
    </message>
    <message>
        <source>a second price for the same landing</source>
        <translation>ein zweiter Preis für dieselbe Lötstelle</translation>
    </message>
    <message>
        <source>no price for a kind of landing</source>
        <translation>kein Preis für eine Art von Lötstelle</translation>
    </message>
    <message>
        <source>thinner than its copper</source>
        <translation>dünner als sein Kupfer</translation>
    </message>
    <message>
        <source>copper_mm or more</source>
        <translation>copper_mm oder mehr</translation>
    </message>
    <message>
        <source>a second entry for the same role</source>
        <translation>ein zweiter Eintrag für dieselbe Rolle</translation>
    </message>
    <message>
        <source>no entry for a role</source>
        <translation>kein Eintrag für eine Rolle</translation>
    </message>
    <message>
        <source>braces that do not match</source>
        <translation>Klammern, die nicht zueinander passen</translation>
    </message>
    <message>
        <source>a name that nothing fills in</source>
        <translation>ein Name, für den nichts eingesetzt wird</translation>
    </message>
    <message>
        <source>unknown condition</source>
        <translation>unbekannte Bedingung</translation>
    </message>
    <message>
        <source>only a check has something expected</source>
        <translation>nur bei einer Prüfung wird etwas erwartet</translation>
    </message>
    <message>
        <source>unknown kind of work</source>
        <translation>unbekannte Art von Arbeit</translation>
    </message>
    <message>
        <source>a jumper&apos;s steps come from its proposal</source>
        <translation>die Schritte einer Brücke kommen aus ihrem Vorschlag</translation>
    </message>
    <message>
        <source>a second rule for the same zone</source>
        <translation>eine zweite Regel für dieselbe Zone</translation>
    </message>
    <message>
        <source>no rule for a kind of zone</source>
        <translation>keine Regel für eine Art von Zone</translation>
    </message>
    <message>
        <source>job id {}</source>
        <translation>Auftragskennung {}</translation>
    </message>
    <message>
        <source>what is put back has no id</source>
        <translation>was zurückgelegt wird, hat keine Kennung</translation>
    </message>
    <message>
        <source>{}, {} times</source>
        <translation>{}, {}-mal</translation>
    </message>
    <message>
        <source>{} by {}</source>
        <translation>{} mal {}</translation>
    </message>
    <message>
        <source>16 to 20000 pixels each way</source>
        <translation>16 bis 20000 Pixel in jeder Richtung</translation>
    </message>
    <message>
        <source>picture could not be encoded as PNG</source>
        <translation>das Bild ließ sich nicht als PNG kodieren</translation>
    </message>
    <message>
        <source>page {} could not be drawn</source>
        <translation>Seite {} ließ sich nicht zeichnen</translation>
    </message>
    <message>
        <source>at most {} characters</source>
        <translation>höchstens {} Zeichen</translation>
    </message>
    <message>
        <source>a setting that no serial port has</source>
        <translation>eine Einstellung, die keine serielle Schnittstelle hat</translation>
    </message>
    <message>
        <source>no orders to the matcher</source>
        <translation>keine Anweisungen an den Sucher</translation>
    </message>
    <message>
        <source>a regular expression</source>
        <translation>ein regulärer Ausdruck</translation>
    </message>
    <message>
        <source>not a regular expression</source>
        <translation>kein regulärer Ausdruck</translation>
    </message>
    <message>
        <source>one in Perl&apos;s manner</source>
        <translation>einer nach Perls Art</translation>
    </message>
    <message>
        <source>no group for the value</source>
        <translation>keine Gruppe für den Wert</translation>
    </message>
    <message>
        <source>the expression does not read its example</source>
        <translation>der Ausdruck liest sein Beispiel nicht</translation>
    </message>
    <message>
        <source>a pattern needs an example</source>
        <translation>ein Muster braucht ein Beispiel</translation>
    </message>
    <message>
        <source>not an id</source>
        <translation>keine Kennung</translation>
    </message>
    <message>
        <source>small letters, digits and dashes, a letter first</source>
        <translation>kleine Buchstaben, Ziffern und Striche, zuerst ein Buchstabe</translation>
    </message>
    <message>
        <source>two patterns with one id</source>
        <translation>zwei Muster mit einer Kennung</translation>
    </message>
    <message>
        <source>serial:/dev/NAME, :PATTERN and @BAUD behind if need be</source>
        <translation>serial:/dev/NAME, dahinter bei Bedarf :MUSTER und @BAUD</translation>
    </message>
    <message>
        <source>at most 1E15, or 9.9E37</source>
        <translation>höchstens 1E15, oder 9.9E37</translation>
    </message>
    <message>
        <source>a name in quotes such as &quot;DIOD&quot;</source>
        <translation>ein Name in Anführungszeichen wie &quot;DIOD&quot;</translation>
    </message>
    <message>
        <source>not an entry of the error queue</source>
        <translation>kein Eintrag der Fehlerliste</translation>
    </message>
    <message>
        <source>maker, model, serial number and firmware</source>
        <translation>Hersteller, Modell, Seriennummer und Firmware</translation>
    </message>
    <message>
        <source>id {} is above last_id</source>
        <translation>Kennung {} liegt über last_id</translation>
    </message>
    <message>
        <source>written by a newer Netmend: journal format {}, this one reads up to {}</source>
        <translation>von einem neueren Netmend geschrieben: Journalformat {}, dieses liest bis {}</translation>
    </message>
    <message>
        <source>the job has no such entry</source>
        <translation>der Auftrag hat keinen solchen Eintrag</translation>
    </message>
    <message>
        <source>at most version {}</source>
        <translation>höchstens Version {}</translation>
    </message>
    <message>
        <source>{}; {}</source>
        <translation>{}; {}</translation>
    </message>
    <message>
        <source>{} to 1</source>
        <translation>{} zu 1</translation>
    </message>
    <message>
        <source>1 to {}</source>
        <translation>1 zu {}</translation>
    </message>
    <message>
        <source>once in {}</source>
        <translation>einmal in {}</translation>
    </message>
    <message numerus="yes">
        <source>{n} good board read OL</source>
        <comment>{n} good boards read OL</comment>
        <translation>
            <numerusform>{n} gute Platine zeigte OL</numerusform>
            <numerusform>{n} gute Platinen zeigten OL</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>{n} good board read {}</source>
        <comment>{n} good boards read {}</comment>
        <translation>
            <numerusform>{n} gute Platine zeigte {}</numerusform>
            <numerusform>{n} gute Platinen zeigten {}</numerusform>
        </translation>
    </message>
    <message>
        <source>of {} good boards {} read OL, the others {}</source>
        <translation>von {} guten Platinen zeigten {} OL, die anderen {}</translation>
    </message>
    <message>
        <source>signal pins</source>
        <translation>Signalpins</translation>
    </message>
    <message>
        <source>supply pins</source>
        <translation>Versorgungspins</translation>
    </message>
    <message>
        <source>ground pins</source>
        <translation>Massepins</translation>
    </message>
    <message>
        <source>unconnected pins</source>
        <translation>nicht angeschlossene Pins</translation>
    </message>
    <message>
        <source>unknown pins</source>
        <translation>unbekannte Pins</translation>
    </message>
    <message>
        <source>{} below the expected {}, {} times the spread</source>
        <translation>{} unter dem Soll {}, das {}-Fache der Streuung</translation>
    </message>
    <message>
        <source>{} above the expected {}, {} times the spread</source>
        <translation>{} über dem Soll {}, das {}-Fache der Streuung</translation>
    </message>
    <message>
        <source>reads {}, at 25 °C {}</source>
        <translation>zeigt {}, bei 25 °C {}</translation>
    </message>
    <message>
        <source>{}</source>
        <translation>{}</translation>
    </message>
    <message>
        <source>{}; expected {}: {}</source>
        <translation>{}; Soll {}: {}</translation>
    </message>
    <message>
        <source>{} ({})</source>
        <translation>{} ({})</translation>
    </message>
    <message>
        <source>a {} has no id</source>
        <translation>ein {} ohne Kennung</translation>
    </message>
    <message>
        <source>{}: the id belongs to a {}</source>
        <translation>{}: die Kennung gehört zu einem {}</translation>
    </message>
    <message>
        <source>the board&apos;s info {}</source>
        <translation>die Angaben der Platine: {}</translation>
    </message>
    <message>
        <source>names no {}</source>
        <translation>nennt kein {}</translation>
    </message>
    <message>
        <source>names {} {}, which does not exist</source>
        <translation>nennt {} {}, das es nicht gibt</translation>
    </message>
    <message>
        <source>nothing here has such a place or value</source>
        <translation>hier gibt es keinen solchen Ort oder Wert</translation>
    </message>
    <message>
        <source>an end of the jumper, its wire, or the supply</source>
        <translation>ein Ende der Brücke, ihr Draht oder die Versorgung</translation>
    </message>
    <message>
        <source>target or supply</source>
        <translation>target oder supply</translation>
    </message>
    <message>
        <source>only a check is measured</source>
        <translation>nur eine Prüfung wird gemessen</translation>
    </message>
    <message>
        <source>at most {} values</source>
        <translation>höchstens {} Werte</translation>
    </message>
    <message>
        <source>line {}: the column &quot;{}&quot; is not read</source>
        <translation>Zeile {}: die Spalte „{}“ wird nicht gelesen</translation>
    </message>
    <message>
        <source>at most {} pins</source>
        <translation>höchstens {} Anschlüsse</translation>
    </message>
    <message>
        <source>{}: {}, first at {}</source>
        <translation>{}: {}, zuerst bei {}</translation>
    </message>
    <message>
        <source>and {} more notices</source>
        <translation>und {} weitere Hinweise</translation>
    </message>
    <message>
        <source>outlines other than the board&apos;s edge, not read</source>
        <translation>Umrisse, die nicht der Platinenrand sind, nicht gelesen</translation>
    </message>
    <message>
        <source>net names that run past their columns, read to column 20</source>
        <translation>Netznamen, die über ihre Spalten hinausgehen, bis Spalte 20 gelesen</translation>
    </message>
    <message>
        <source>317, 327, 367 or 307</source>
        <translation>317, 327, 367 oder 307</translation>
    </message>
    <message>
        <source>378 or 389</source>
        <translation>378 oder 389</translation>
    </message>
    <message>
        <source>step records of a panel, not read</source>
        <translation>Schritt-Datensätze eines Nutzens, nicht gelesen</translation>
    </message>
    <message>
        <source>records {}, not read</source>
        <translation>Datensätze {}, nicht gelesen</translation>
    </message>
    <message>
        <source>line {}: the data of the panel were not read</source>
        <translation>Zeile {}: die Daten des Nutzens wurden nicht gelesen</translation>
    </message>
    <message>
        <source>conductors drawn with a rectangular pen, its smaller side taken as width</source>
        <translation>Leiter, mit rechteckiger Blende gezeichnet, deren kürzere Seite als Breite genommen</translation>
    </message>
    <message>
        <source>names that end in half a letter, which is left out</source>
        <translation>Namen, die mit einem halben Buchstaben enden, der weggelassen wurde</translation>
    </message>
    <message>
        <source>bytes that are not UTF-8, read as Latin-1</source>
        <translation>Bytes, die kein UTF-8 sind, als Latin-1 gelesen</translation>
    </message>
    <message>
        <source>{} overlaps of different nets, the other way {}</source>
        <translation>{} Überlappungen verschiedener Netze, andersherum {}</translation>
    </message>
    <message>
        <source>pads at odd angles: {}, first at {}; angles taken as counted clockwise: {}</source>
        <translation>Lötflächen in schrägen Winkeln: {}, zuerst bei {}; Winkel als im Uhrzeigersinn gezählt genommen: {}</translation>
    </message>
    <message>
        <source>pads at odd angles: {}, first at {}; angles taken as counted counter-clockwise: {}</source>
        <translation>Lötflächen in schrägen Winkeln: {}, zuerst bei {}; Winkel als gegen den Uhrzeigersinn gezählt genommen: {}</translation>
    </message>
    <message>
        <source>pads at quarter turns with holes: {}, first at {}; sizes taken as they lie on the board: {}</source>
        <translation>Lötflächen mit Loch in Vierteldrehungen: {}, zuerst bei {}; Maße so genommen, wie sie auf der Platine liegen: {}</translation>
    </message>
    <message>
        <source>pads at quarter turns without holes: {}, first at {}; sizes taken as they lie on the board: {}</source>
        <translation>Lötflächen ohne Loch in Vierteldrehungen: {}, zuerst bei {}; Maße so genommen, wie sie auf der Platine liegen: {}</translation>
    </message>
    <message>
        <source>pads taken as ovals, as the corners of their rectangles reach into other nets: {}</source>
        <translation>Lötflächen, die als Ovale gelten, da die Ecken ihrer Rechtecke in andere Netze reichen: {}</translation>
    </message>
    <message>
        <source>points on inner layers, their reach left unknown</source>
        <translation>Punkte auf Innenlagen, deren Reichweite unbekannt bleibt</translation>
    </message>
    <message>
        <source>blind vias of which only one layer is said, read as on that one alone</source>
        <translation>Sacklöcher, von denen nur eine Lage genannt ist, nur auf dieser gelesen</translation>
    </message>
    <message>
        <source>points marked as lying in the middle of their net</source>
        <translation>Punkte, als Mitte ihres Netzes bezeichnet</translation>
    </message>
    <message>
        <source>aliases that stand for two nets, of which the first was used</source>
        <translation>Kurznamen, die für zwei Netze stehen; das erste wurde genommen</translation>
    </message>
    <message>
        <source>{}: {} and {}</source>
        <translation>{}: {} und {}</translation>
    </message>
    <message>
        <source>the nets {} and {} have the same first {} characters; such pairs: {}</source>
        <translation>die Netze {} und {} haben dieselben ersten {} Zeichen; solche Paare: {}</translation>
    </message>
    <message>
        <source>net {} may be {} cut to {} characters; they were read as two nets; such nets: {}</source>
        <translation>Netz {} ist vielleicht {}, auf {} Zeichen gekürzt; als zwei Netze gelesen; solche Netze: {}</translation>
    </message>
    <message>
        <source>net names that fill all {} columns and may have been cut: {}; nets whose names were cut to the same would appear as one</source>
        <translation>Netznamen, die alle {} Spalten füllen und vielleicht gekürzt sind: {}; Netze mit gleich gekürzten Namen erschienen als eines</translation>
    </message>
    <message>
        <source>SI, CUST 0, CUST 1 or CUST 2</source>
        <translation>SI, CUST 0, CUST 1 oder CUST 2</translation>
    </message>
    <message>
        <source>one UNITS</source>
        <translation>ein UNITS</translation>
    </message>
    <message>
        <source>dimensions, targets and tables on copper layers, left out</source>
        <translation>Maße, Zielmarken und Tabellen auf Kupferlagen, weggelassen</translation>
    </message>
    <message>
        <source>{}: {}, first in line {}</source>
        <translation>{}: {}, zuerst in Zeile {}</translation>
    </message>
    <message>
        <source>tracks on layers without copper, left out</source>
        <translation>Leiterbahnen auf Lagen ohne Kupfer, weggelassen</translation>
    </message>
    <message>
        <source>tracks on layers that the file does not declare, left out</source>
        <translation>Leiterbahnen auf Lagen, die die Datei nicht nennt, weggelassen</translation>
    </message>
    <message>
        <source>filled zones on layers without copper, left out</source>
        <translation>gefüllte Flächen auf Lagen ohne Kupfer, weggelassen</translation>
    </message>
    <message>
        <source>filled zones on layers that the file does not declare, left out</source>
        <translation>gefüllte Flächen auf Lagen, die die Datei nicht nennt, weggelassen</translation>
    </message>
    <message>
        <source>old filled areas that could not be widened by the pen they were drawn with</source>
        <translation>alte gefüllte Flächen, die nicht um ihre Strichbreite erweitert werden konnten</translation>
    </message>
    <message>
        <source>vias between layers that the file does not declare, taken as through all</source>
        <translation>Vias zwischen Lagen, die die Datei nicht nennt, als durchgehend genommen</translation>
    </message>
    <message>
        <source>vias without ring on layers where nothing joins</source>
        <translation>Vias ohne Ring auf Lagen, wo nichts anschließt</translation>
    </message>
    <message>
        <source>vias without size, left out</source>
        <translation>Vias ohne Maß, weggelassen</translation>
    </message>
    <message>
        <source>zones that are not filled, so that their copper is not known</source>
        <translation>Flächen, die nicht gefüllt sind, deren Kupfer also unbekannt ist</translation>
    </message>
    <message>
        <source>lines without width drawn on copper layers, left out</source>
        <translation>Linien ohne Breite auf Kupferlagen, weggelassen</translation>
    </message>
    <message>
        <source>drawn copper shapes without a net, read as areas whose net is unknown</source>
        <translation>gezeichnete Kupferformen ohne Netz, als Flächen unbekannten Netzes gelesen</translation>
    </message>
    <message>
        <source>pieces of custom pads that do not hang together with them, read as areas</source>
        <translation>Stücke eigener Lötflächen, die nicht mit ihnen zusammenhängen, als Flächen gelesen</translation>
    </message>
    <message>
        <source>pads without ring on layers where nothing joins</source>
        <translation>Lötflächen ohne Ring auf Lagen, wo nichts anschließt</translation>
    </message>
    <message>
        <source>pads only on inner layers, their reach left unknown</source>
        <translation>Lötflächen nur auf Innenlagen, deren Reichweite unbekannt bleibt</translation>
    </message>
    <message>
        <source>texts on copper layers, left out</source>
        <translation>Texte auf Kupferlagen, weggelassen</translation>
    </message>
    <message>
        <source>the board&apos;s edge has {} pieces, more than {}; it is left unknown</source>
        <translation>der Platinenrand hat {} Stücke, mehr als {}; er bleibt unbekannt</translation>
    </message>
    <message>
        <source>the board&apos;s edge is open, such chains are left out: {}, first between {} and {}</source>
        <translation>der Rand der Platine ist offen, solche Linien werden weggelassen: {}, die erste zwischen {} und {}</translation>
    </message>
    <message>
        <source>pins that stand on another net elsewhere, read as two pins, their labels may have been cut</source>
        <translation>Anschlüsse, die anderswo auf einem anderen Netz stehen, als zwei gelesen; ihre Namen sind vielleicht gekürzt</translation>
    </message>
    <message>
        <source>{}: {}, which stands at {}, too</source>
        <translation>{}: {}, steht auch bei {}</translation>
    </message>
    <message>
        <source>above {} MiB</source>
        <translation>über {} MiB</translation>
    </message>
    <message>
        <source>beyond {} MiB of the archive</source>
        <translation>jenseits von {} MiB des Archivs</translation>
    </message>
    <message>
        <source>archives inside the archive, not opened</source>
        <translation>Archive im Archiv, nicht geöffnet</translation>
    </message>
    <message>
        <source>files in the archive that are not read: {}</source>
        <translation>Dateien im Archiv, die nicht gelesen werden: {}</translation>
    </message>
    <message>
        <source>the cell of a mesh has no size</source>
        <translation>die Zelle eines Netzes hat keine Größe</translation>
    </message>
    <message>
        <source>the area is too large for a mesh of this cell</source>
        <translation>die Fläche ist zu groß für ein Netz dieser Zelle</translation>
    </message>
    <message>
        <source>{} × {} cells</source>
        <translation>{} × {} Zellen</translation>
    </message>
    <message>
        <source>the area needs too many nodes for this cell</source>
        <translation>die Fläche braucht zu viele Knoten für diese Zelle</translation>
    </message>
    <message>
        <source>{} nodes</source>
        <translation>{} Knoten</translation>
    </message>
    <message>
        <source>no node of the mesh lies under the contact</source>
        <translation>kein Knoten des Netzes liegt unter dem Kontakt</translation>
    </message>
    <message>
        <source>a cell of {} mm</source>
        <translation>eine Zelle von {} mm</translation>
    </message>
    <message>
        <source>the contacts do not hang together through the area</source>
        <translation>die Kontakte hängen nicht über die Fläche zusammen</translation>
    </message>
    <message>
        <source>necks narrower than {} mm</source>
        <translation>Engstellen unter {} mm</translation>
    </message>
    <message>
        <source>the area is narrower than the mesh everywhere</source>
        <translation>die Fläche ist überall schmaler als das Netz</translation>
    </message>
    <message>
        <source>edge {}</source>
        <translation>Kante {}</translation>
    </message>
    <message>
        <source>0 to {}</source>
        <translation>0 bis {}</translation>
    </message>
    <message>
        <source>{} edges</source>
        <translation>{} Kanten</translation>
    </message>
    <message>
        <source>edges whose loss parts the line</source>
        <translation>Kanten, ohne die die Leitung zerfällt</translation>
    </message>
    <message>
        <source>{} pieces with terminals</source>
        <translation>{} Stücke mit Anschlüssen</translation>
    </message>
    <message>
        <source>a ring of {} corners from ({}, {}) mm</source>
        <translation>ein Ring von {} Ecken ab ({}, {}) mm</translation>
    </message>
    <message>
        <source>{} mm by {} mm</source>
        <translation>{} mm mal {} mm</translation>
    </message>
    <message>
        <source>a place more than 2 m from the board&apos;s origin</source>
        <translation>eine Stelle mehr als 2 m vom Ursprung der Platine</translation>
    </message>
    <message>
        <source>less than 1070 mm</source>
        <translation>weniger als 1070 mm</translation>
    </message>
    <message>
        <source>{}, at 25 °C {}</source>
        <translation>{}, bei 25 °C {}</translation>
    </message>
    <message>
        <source>{} is expected</source>
        <translation>{} wird erwartet</translation>
    </message>
    <message>
        <source>{} is expected, or OL ({} %)</source>
        <translation>{} wird erwartet, oder OL ({} %)</translation>
    </message>
    <message>
        <source>more than {} times likelier</source>
        <translation>mehr als {}-mal wahrscheinlicher</translation>
    </message>
    <message>
        <source>more than {} times less likely</source>
        <translation>mehr als {}-mal unwahrscheinlicher</translation>
    </message>
    <message>
        <source>{} times likelier</source>
        <translation>{}-mal wahrscheinlicher</translation>
    </message>
    <message>
        <source>{} times less likely</source>
        <translation>{}-mal unwahrscheinlicher</translation>
    </message>
    <message>
        <source>{} read OL, but good boards read {} V there</source>
        <translation>{} maß OL, gute Platinen messen dort aber {} V</translation>
    </message>
    <message>
        <source>narrows {} possible repairs down to {} in {} s</source>
        <translation>engt {} mögliche Reparaturen auf {} ein, in {} s</translation>
    </message>
    <message>
        <source>{}: {}. Before any reading {}.</source>
        <translation>{}: {}. Vor jeder Messung {}.</translation>
    </message>
    <message>
        <source>{} {}.</source>
        <translation>{} {}.</translation>
    </message>
    <message numerus="yes">
        <source>{n} more reading tells less</source>
        <comment>{n} more readings tell less</comment>
        <translation>
            <numerusform>{n} weitere Messung sagt weniger</numerusform>
            <numerusform>{n} weitere Messungen sagen weniger</numerusform>
        </translation>
    </message>
    <message>
        <source>Shares on a line of this size are worked out to about {} % only</source>
        <translation>Anteile sind bei einer Leitung dieser Größe nur auf etwa {} % genau berechnet</translation>
    </message>
    <message>
        <source>{} read {}, but {} if it is &quot;{}&quot;: the probe may have slipped ({} %)</source>
        <translation>{} maß {}, aber {}, wenn es „{}“ ist: die Spitze ist vielleicht abgerutscht ({} %)</translation>
    </message>
    <message>
        <source>{}: if the probe had slipped, the line may be sound</source>
        <translation>{}: ist die Spitze abgerutscht, kann die Leitung heil sein</translation>
    </message>
    <message>
        <source>Take this reading again.</source>
        <translation>Diese Messung wiederholen.</translation>
    </message>
    <message>
        <source>Settles it, most likely.</source>
        <translation>Entscheidet es wahrscheinlich.</translation>
    </message>
    <message>
        <source>Halves what is left.</source>
        <translation>Halbiert den Rest.</translation>
    </message>
    <message>
        <source>Takes a quarter of what is left.</source>
        <translation>Nimmt ein Viertel vom Rest.</translation>
    </message>
    <message>
        <source>Tells a little.</source>
        <translation>Sagt ein wenig.</translation>
    </message>
    <message>
        <source>OL is to be expected with {} %, else {} V</source>
        <translation>OL ist mit {} % zu erwarten, sonst {} V</translation>
    </message>
    <message>
        <source>OL is to be expected with {} %</source>
        <translation>OL ist zu {} % zu erwarten</translation>
    </message>
    <message>
        <source>{}: take this reading again before anything else</source>
        <translation>{}: diese Messung zuerst wiederholen</translation>
    </message>
    <message>
        <source>as many as {} equally likely repairs are left and the best guess holds {} %</source>
        <translation>so viel wie {} gleich wahrscheinliche Reparaturen bleiben, und die beste Vermutung hat {} %</translation>
    </message>
    <message>
        <source>a wrong repair costs {} min, on average {} min from here</source>
        <translation>eine falsche Reparatur kostet {} min, im Mittel {} min von hier</translation>
    </message>
    <message>
        <source>copper whose way nobody has seen holds {} % of the chances: there a break is found between pins, not along the track; drawing that way would say where</source>
        <translation>Kupfer, dessen Weg niemand gesehen hat, trägt {} % der Wahrscheinlichkeit: dort wird ein Bruch zwischen Anschlüssen gefunden, nicht entlang der Leiterbahn; den Weg zeichnen würde sagen, wo</translation>
    </message>
    <message>
        <source>no good board&apos;s value is known on this line: readings are predicted to about {} mV; one value from a good board would make that about {} mV</source>
        <translation>auf dieser Leitung ist kein Gutwert bekannt: Messungen sind auf etwa {} mV vorhergesagt; ein Wert einer guten Platine machte daraus etwa {} mV</translation>
    </message>
    <message>
        <source>hole at ({}, {}) mm</source>
        <translation>Loch bei ({}, {}) mm</translation>
    </message>
    <message>
        <source>{} zone</source>
        <translation>Zone {}</translation>
    </message>
    <message>
        <source>{} zone {}</source>
        <translation>Zone {} {}</translation>
    </message>
    <message>
        <source>{} mm of wire</source>
        <translation>{} mm Draht</translation>
    </message>
    <message>
        <source>{} mm wide: lifts easily</source>
        <translation>{} mm breit: löst sich leicht ab</translation>
    </message>
    <message>
        <source>{} mm to spare beyond the margins</source>
        <translation>{} mm über die Abstände hinaus frei</translation>
    </message>
    <message>
        <source>{} mm inside: {}</source>
        <translation>{} mm darin: {}</translation>
    </message>
    <message>
        <source>{}: inside the margin of {}; opened there for {} mm</source>
        <translation>{}: im Abstand zu {}; dort auf {} mm geöffnet</translation>
    </message>
    <message>
        <source>straight it would be {} mm, but too near to the rounded corner of a margin</source>
        <translation>gerade wären es {} mm, aber zu nah an der runden Ecke eines Abstands</translation>
    </message>
    <message>
        <source>straight it would be {} mm, but too near to {}</source>
        <translation>gerade wären es {} mm, aber zu nah an {}</translation>
    </message>
    <message>
        <source>neither side of the break has a landing that can be reached; see what was left out, and why</source>
        <translation>keine Seite des Bruchs hat eine erreichbare Lötstelle; siehe, was warum wegfiel</translation>
    </message>
    <message>
        <source>at ({}, {}) mm</source>
        <translation>bei ({}, {}) mm</translation>
    </message>
    <message>
        <source>{} mm right of {}</source>
        <translation>{} mm rechts von {}</translation>
    </message>
    <message>
        <source>{} mm left of {}</source>
        <translation>{} mm links von {}</translation>
    </message>
    <message>
        <source>{} mm above {}</source>
        <translation>{} mm über {}</translation>
    </message>
    <message>
        <source>{} mm below {}</source>
        <translation>{} mm unter {}</translation>
    </message>
    <message>
        <source>at {}</source>
        <translation>bei {}</translation>
    </message>
    <message>
        <source>its end {}</source>
        <translation>Ende {}</translation>
    </message>
    <message>
        <source>an end that nobody has seen</source>
        <translation>einem Ende, das niemand gesehen hat</translation>
    </message>
    <message>
        <source>track from {} towards {}, first {} mm</source>
        <translation>Leiterbahn ab {} zu {}, erste {} mm</translation>
    </message>
    <message>
        <source>track from {} towards {}, last {} mm</source>
        <translation>Leiterbahn ab {} zu {}, letzte {} mm</translation>
    </message>
    <message>
        <source>track from {} towards {}, {} to {} mm</source>
        <translation>Leiterbahn ab {} zu {}, {} bis {} mm</translation>
    </message>
    <message>
        <source>track between the vias {} and {}</source>
        <translation>Leiterbahn zwischen Vias {} und {}</translation>
    </message>
    <message>
        <source>via {}</source>
        <translation>Via {}</translation>
    </message>
    <message>
        <source>track {}</source>
        <translation>Leiterbahn {}</translation>
    </message>
    <message>
        <source>a place that nobody has seen</source>
        <translation>eine Stelle, die niemand gesehen hat</translation>
    </message>
    <message>
        <source>{}, bottom</source>
        <translation>{}, unten</translation>
    </message>
    <message>
        <source>{}, inner layer</source>
        <translation>{}, Innenlage</translation>
    </message>
    <message>
        <source>{} ± {} in diode mode</source>
        <translation>{} ± {} in Diodenmessung</translation>
    </message>
    <message>
        <source>It works as on a good device</source>
        <translation>Läuft wie beim guten Gerät</translation>
    </message>
    <message>
        <source>{}, as it must be</source>
        <translation>{}, wie es sein muss</translation>
    </message>
    <message>
        <source>{}, NOT as it must be</source>
        <translation>{}, NICHT wie es sein muss</translation>
    </message>
    <message>
        <source>break at the edges named by hand</source>
        <translation>Bruch an den von Hand genannten Kanten</translation>
    </message>
    <message>
        <source>{} track</source>
        <translation>Leiterbahn {}</translation>
    </message>
    <message>
        <source>{} inner track</source>
        <translation>innere Leiterbahn {}</translation>
    </message>
    <message>
        <source>via with a {} hole</source>
        <translation>Via, Loch {}</translation>
    </message>
    <message>
        <source>plated hole of {} ({})</source>
        <translation>durchkontaktiertes Loch {} ({})</translation>
    </message>
    <message>
        <source>pad of {} ({} wide)</source>
        <translation>Lötfläche {} ({} breit)</translation>
    </message>
    <message>
        <source>{} is more than {} % of its fusing current of {}</source>
        <translation>{} ist mehr als {} % seines Schmelzstroms von {}</translation>
    </message>
    <message>
        <source>{} would warm it by more than {}, which {} does</source>
        <translation>{} würde ihn um mehr als {} erwärmen, das tun {}</translation>
    </message>
    <message>
        <source>it would drop {}, more than the {} allowed</source>
        <translation>an ihm fielen {} ab, mehr als die erlaubten {}</translation>
    </message>
    <message>
        <source>{} as asked for</source>
        <translation>{} wie verlangt</translation>
    </message>
    <message>
        <source>{} as the net is rated</source>
        <translation>{}, Nennstrom des Netzes</translation>
    </message>
    <message>
        <source>{} taken for a net of this role</source>
        <translation>{} für ein Netz dieser Rolle angenommen</translation>
    </message>
    <message>
        <source>{} carries {} (IPC-2221, {})</source>
        <translation>{} trägt {} (IPC-2221, {})</translation>
    </message>
    <message>
        <source>{}; more than a net of this role is taken to carry: taken as {}</source>
        <translation>{}; mehr, als ein Netz dieser Rolle führen soll: angenommen {}</translation>
    </message>
    <message>
        <source>{}; its role is not known and its copper narrow, so that it counts as a signal: taken as {}</source>
        <translation>{}; Rolle unbekannt, Kupfer schmal, zählt als Signal: angenommen {}</translation>
    </message>
    <message>
        <source>{}: taken as {}</source>
        <translation>{}: angenommen {}</translation>
    </message>
    <message>
        <source>{} ohm over {} mm drops {} of {} allowed</source>
        <translation>{} Ohm über {} mm: {} von {} erlaubtem Abfall</translation>
    </message>
    <message>
        <source>carries {} for a rise of {}; fuses at about {}</source>
        <translation>trägt {} bei {} Erwärmung; schmilzt bei etwa {}</translation>
    </message>
    <message>
        <source>no thinner one: {}: {}</source>
        <translation>kein dünnerer: {}: {}</translation>
    </message>
    <message>
        <source>no wire of the table carries {} over {} mm; this one is too thin: {}</source>
        <translation>kein Draht der Tabelle trägt {} über {} mm; dieser ist zu dünn: {}</translation>
    </message>
    <message>
        <source>{}, {}, other lead on {}</source>
        <translation>{}, {}, andere Leitung an {}</translation>
    </message>
    <message>
        <source>{} pages</source>
        <translation>{} Seiten</translation>
    </message>
    <message>
        <source>at most 500</source>
        <translation>höchstens 500</translation>
    </message>
    <message>
        <source>A {}</source>
        <translation>A {}</translation>
    </message>
    <message>
        <source>B {}</source>
        <translation>B {}</translation>
    </message>
    <message>
        <source>0 V across the battery contacts and the large capacitors</source>
        <translation>0 V über Akkukontakten und großen Kondensatoren</translation>
    </message>
    <message>
        <source>Otherwise discharge them and measure again.</source>
        <translation>Sonst entladen und nochmals messen.</translation>
    </message>
    <message>
        <source>{expected_from}</source>
        <translation>{expected_from}</translation>
    </message>
    <message>
        <source>Go on. OL where a value is expected: the break is on the other side of this place, stop. A short: this is another copper, stop.</source>
        <translation>Weiter. OL, wo ein Wert erwartet wird: der Bruch liegt auf der anderen Seite dieser Stelle, halt. Kurzschluss: das ist anderes Kupfer, halt.</translation>
    </message>
    <message>
        <source>{expected_to}</source>
        <translation>{expected_to}</translation>
    </message>
    <message>
        <source>No short</source>
        <translation>Kein Kurzschluss</translation>
    </message>
    <message>
        <source>Otherwise take the mask off, clean, and mask again.</source>
        <translation>Sonst Lack abnehmen, reinigen und neu decken.</translation>
    </message>
    <message>
        <source>About {resistance} or little more</source>
        <translation>Etwa {resistance} oder wenig mehr</translation>
    </message>
    <message>
        <source>Otherwise an end is not stripped or the wire is nicked: take a new one.</source>
        <translation>Sonst ist ein Ende nicht abisoliert oder der Draht gekerbt: einen neuen nehmen.</translation>
    </message>
    <message>
        <source>Bright solder on the landing only, no short</source>
        <translation>Blankes Lot nur auf der Lötstelle, kein Kurzschluss</translation>
    </message>
    <message>
        <source>Otherwise wick it off and tin again.</source>
        <translation>Sonst mit Litze absaugen und neu verzinnen.</translation>
    </message>
    <message>
        <source>{expected_from}, no short</source>
        <translation>{expected_from}, kein Kurzschluss</translation>
    </message>
    <message>
        <source>Otherwise do the joint again.</source>
        <translation>Sonst Lötstelle neu machen.</translation>
    </message>
    <message>
        <source>{expected_bridged}, no short</source>
        <translation>{expected_bridged}, kein Kurzschluss</translation>
    </message>
    <message>
        <source>About {resistance}</source>
        <translation>Etwa {resistance}</translation>
    </message>
    <message>
        <source>More than twice that: a joint is bad.</source>
        <translation>Mehr als das Doppelte: eine Lötstelle ist schlecht.</translation>
    </message>
    <message>
        <source>{expected_bridged} at both ends</source>
        <translation>{expected_bridged} an beiden Enden</translation>
    </message>
    <message>
        <source>Otherwise a second break: go back to the readings.</source>
        <translation>Sonst ein zweiter Bruch: zurück zu den Messungen.</translation>
    </message>
    <message>
        <source>Nothing presses on the wire and every lid closes</source>
        <translation>Nichts drückt auf den Draht und jeder Deckel schließt</translation>
    </message>
    <message>
        <source>Otherwise lay it anew.</source>
        <translation>Sonst neu verlegen.</translation>
    </message>
    <message>
        <source>It works for several minutes</source>
        <translation>Läuft mehrere Minuten</translation>
    </message>
    <message>
        <source>Otherwise the jumper does not do for this line.</source>
        <translation>Sonst taugt die Drahtbrücke für diese Leitung nicht.</translation>
    </message>
    <message>
        <source>A start current as on a good board, and the function works</source>
        <translation>Anlaufstrom wie bei guter Platine, und die Funktion läuft</translation>
    </message>
    <message>
        <source>Otherwise switch off at once.</source>
        <translation>Sonst sofort abschalten.</translation>
    </message>
    <message>
        <source>A smooth fillet on pad and leg, no bridge</source>
        <translation>Glatte Kehle an Lötfläche und Anschluss, keine Brücke</translation>
    </message>
    <message>
        <source>Otherwise do it again.</source>
        <translation>Sonst wiederholen.</translation>
    </message>
    <message>
        <source>{expected}</source>
        <translation>{expected}</translation>
    </message>
    <message>
        <source>Otherwise the fault is elsewhere or not alone: go back to the readings.</source>
        <translation>Sonst liegt der Fehler woanders oder nicht allein hier: zurück zu den Messungen.</translation>
    </message>
    <message>
        <source>Otherwise look for solder between neighbours before going on.</source>
        <translation>Sonst vor dem Weitermachen Lot zwischen Nachbarn suchen.</translation>
    </message>
    <message>
        <source>All pads are there and flat</source>
        <translation>Alle Lötflächen sind da und flach</translation>
    </message>
    <message>
        <source>Otherwise the repair becomes a track repair: stop and note it.</source>
        <translation>Sonst wird es eine Leiterbahnreparatur: halt und notieren.</translation>
    </message>
    <message>
        <source>The fault gone: it was in the part. Still there: it is on the board, do not fit a new part yet.</source>
        <translation>Fehler weg: er lag im Bauteil. Noch da: er liegt auf der Platine, noch kein neues Bauteil einsetzen.</translation>
    </message>
    <message>
        <source>Its value within tolerance</source>
        <translation>Wert in der Toleranz</translation>
    </message>
    <message>
        <source>Otherwise take another.</source>
        <translation>Sonst ein anderes nehmen.</translation>
    </message>
    <message>
        <source>The short or wrong value is gone</source>
        <translation>Kurzschluss oder falscher Wert ist weg</translation>
    </message>
    <message>
        <source>Otherwise the fault is on the board: stop.</source>
        <translation>Sonst liegt der Fehler auf der Platine: halt.</translation>
    </message>
    <message>
        <source>Every joint wetted, no bridge, direction as in the photo</source>
        <translation>Jede Lötstelle benetzt, keine Brücke, Richtung wie im Foto</translation>
    </message>
    <message>
        <source>Otherwise correct it.</source>
        <translation>Sonst berichtigen.</translation>
    </message>
    <message>
        <source>No residue, no eaten pad, leg or track</source>
        <translation>Kein Rückstand, keine zerfressene Lötfläche, kein Anschluss, keine Leiterbahn</translation>
    </message>
    <message>
        <source>Otherwise note each place: they become suspects.</source>
        <translation>Sonst jede Stelle notieren: sie wird verdächtig.</translation>
    </message>
    <message>
        <source>OL or the value of the way round</source>
        <translation>OL oder der Wert des Umwegs</translation>
    </message>
    <message>
        <source>Otherwise copper is left: cut again.</source>
        <translation>Sonst ist noch Kupfer da: nachschneiden.</translation>
    </message>
    <message>
        <source>Otherwise clear the burr.</source>
        <translation>Sonst den Grat entfernen.</translation>
    </message>
    <message>
        <source>All there and listed</source>
        <translation>Alles da und aufgelistet</translation>
    </message>
    <message>
        <source>Otherwise say so on the sheet.</source>
        <translation>Sonst auf dem Auftragsblatt vermerken.</translation>
    </message>
    <message>
        <source>enamelled copper 0.01 mm</source>
        <translation>Kupferlackdraht 0.01 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.02 mm</source>
        <translation>Kupferlackdraht 0.02 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.025 mm</source>
        <translation>Kupferlackdraht 0.025 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.032 mm</source>
        <translation>Kupferlackdraht 0.032 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.04 mm</source>
        <translation>Kupferlackdraht 0.04 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.05 mm</source>
        <translation>Kupferlackdraht 0.05 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.063 mm</source>
        <translation>Kupferlackdraht 0.063 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.071 mm</source>
        <translation>Kupferlackdraht 0.071 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.08 mm</source>
        <translation>Kupferlackdraht 0.08 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.1 mm</source>
        <translation>Kupferlackdraht 0.1 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.125 mm</source>
        <translation>Kupferlackdraht 0.125 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.16 mm</source>
        <translation>Kupferlackdraht 0.16 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.2 mm</source>
        <translation>Kupferlackdraht 0.2 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.25 mm</source>
        <translation>Kupferlackdraht 0.25 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.315 mm</source>
        <translation>Kupferlackdraht 0.315 mm</translation>
    </message>
    <message>
        <source>enamelled copper 0.1 mm, polyimide</source>
        <translation>Kupferlackdraht 0.1 mm, Polyimid</translation>
    </message>
    <message>
        <source>AWG 36 enamelled copper</source>
        <translation>AWG 36 Kupferlackdraht</translation>
    </message>
    <message>
        <source>AWG 34 enamelled copper</source>
        <translation>AWG 34 Kupferlackdraht</translation>
    </message>
    <message>
        <source>AWG 32 enamelled copper</source>
        <translation>AWG 32 Kupferlackdraht</translation>
    </message>
    <message>
        <source>AWG 30 insulated wire</source>
        <translation>AWG 30 isolierter Draht</translation>
    </message>
    <message>
        <source>AWG 28 insulated wire</source>
        <translation>AWG 28 isolierter Draht</translation>
    </message>
    <message>
        <source>AWG 26 insulated wire</source>
        <translation>AWG 26 isolierter Draht</translation>
    </message>
    <message>
        <source>Handheld, 4000 counts</source>
        <translation>Handgerät, 4000 Stufen</translation>
    </message>
    <message>
        <source>Handheld, 20000 counts</source>
        <translation>Handgerät, 20000 Stufen</translation>
    </message>
    <message>
        <source>Bench, 200000 counts, four wires for milliohms</source>
        <translation>Tischgerät, 200000 Stufen, Milliohm mit vier Leitungen</translation>
    </message>
    <message>
        <source>7 or 8</source>
        <translation>7 oder 8</translation>
    </message>
    <message>
        <source>1 or 2</source>
        <translation>1 oder 2</translation>
    </message>
    <message>
        <source>lost the link to {}: {}; next try in {} s</source>
        <translation>Verbindung zu {} verloren: {}; nächster Versuch in {} s</translation>
    </message>
    <message>
        <source>no link to {}: {}; next try in {} s</source>
        <translation>keine Verbindung zu {}: {}; nächster Versuch in {} s</translation>
    </message>
    <message>
        <source>a number and a text such as 0,&quot;No error&quot;</source>
        <translation>eine Zahl und ein Text wie 0,&quot;No error&quot;</translation>
    </message>
    <message>
        <source>no answer</source>
        <translation>keine Antwort</translation>
    </message>
    <message>
        <source>{}: the id is too large</source>
        <translation>{}: die Kennung ist zu groß</translation>
    </message>
    <message>
        <source>{} is replaced by one with another id</source>
        <translation>{} wird durch eines mit anderer Kennung ersetzt</translation>
    </message>
    <message>
        <source>{} is to be removed and does not exist</source>
        <translation>{} soll entfernt werden und ist nicht da</translation>
    </message>
    <message>
        <source>{} {} is to be removed and {} still names it</source>
        <translation>{} {} soll entfernt werden, und {} nennt es noch</translation>
    </message>
    <message>
        <source>the board&apos;s info</source>
        <translation>die Angaben der Platine</translation>
    </message>
    <message>
        <source>the board&apos;s edge crosses itself near {}</source>
        <translation>die Kante der Platine kreuzt sich selbst bei {}</translation>
    </message>
    <message numerus="yes">
        <source>or {n} more place that reads the same</source>
        <comment>or {n} more places that read the same</comment>
        <translation>
            <numerusform>oder {n} weitere Stelle, die gleich liest</numerusform>
            <numerusform>oder {n} weitere Stellen, die gleich lesen</numerusform>
        </translation>
    </message>
    <message>
        <source>Make sure that the board is without power.</source>
        <translation>Sicherstellen, dass die Platine stromlos ist.</translation>
    </message>
    <message>
        <source>Battery disconnected and removed, capacitors discharged.</source>
        <translation>Akku getrennt und entnommen, Kondensatoren entladen.</translation>
    </message>
    <message>
        <source>Uncover the {side} side at {from} and {to}.</source>
        <translation>Freilegen, {side}: {from} und {to}.</translation>
    </message>
    <message>
        <source>Clean both with isopropyl alcohol and let them dry.</source>
        <translation>Beide mit Isopropanol reinigen und trocknen lassen.</translation>
    </message>
    <message>
        <source>Scrape the solder mask off {from} until copper shows.</source>
        <translation>Lötstopplack von {from} kratzen, bis Kupfer erscheint.</translation>
    </message>
    <message>
        <source>No wider than the copper itself; mind the glass dust.</source>
        <translation>Nicht breiter als das Kupfer selbst; auf den Glasstaub achten.</translation>
    </message>
    <message>
        <source>Scrape the solder mask off {to} until copper shows.</source>
        <translation>Lötstopplack von {to} kratzen, bis Kupfer erscheint.</translation>
    </message>
    <message>
        <source>Touch the bare copper at {from} with the probe.</source>
        <translation>Das blanke Kupfer bei {from} mit der Prüfspitze berühren.</translation>
    </message>
    <message>
        <source>Before any tin.</source>
        <translation>Vor jedem Zinn.</translation>
    </message>
    <message>
        <source>Touch the bare copper at {to} with the probe.</source>
        <translation>Das blanke Kupfer bei {to} mit der Prüfspitze berühren.</translation>
    </message>
    <message>
        <source>Cover all other bare copper with UV mask and cure it.</source>
        <translation>Alles andere blanke Kupfer mit UV-Lack decken und härten.</translation>
    </message>
    <message>
        <source>All that scraping laid bare; leave only the landing open.</source>
        <translation>Alles, was beim Kratzen blank wurde; nur die Lötstelle offen lassen.</translation>
    </message>
    <message>
        <source>Measure from the bare landing to ground and to its neighbours.</source>
        <translation>Von der blanken Lötstelle nach Masse und zu den Nachbarn messen.</translation>
    </message>
    <message>
        <source>Its neighbours are the copper that lay above or beside it.</source>
        <translation>Nachbarn sind das Kupfer darüber und daneben.</translation>
    </message>
    <message>
        <source>Cut {cut_length} of {wire} and tin its ends.</source>
        <translation>{cut_length} von {wire} abschneiden und die Enden verzinnen.</translation>
    </message>
    <message>
        <source>Its insulation: {stripping}.</source>
        <translation>Seine Isolierung: {stripping}.</translation>
    </message>
    <message>
        <source>Tin {from} and {to}.</source>
        <translation>{from} und {to} verzinnen.</translation>
    </message>
    <message>
        <source>Little solder, fresh flux, start low with the heat.</source>
        <translation>Wenig Lot, frisches Flussmittel, mit wenig Hitze beginnen.</translation>
    </message>
    <message>
        <source>Look at both landings, and measure each to its neighbours and ground.</source>
        <translation>Beide Lötstellen ansehen und jede zu Nachbarn und Masse messen.</translation>
    </message>
    <message>
        <source>Under the microscope.</source>
        <translation>Unter dem Mikroskop.</translation>
    </message>
    <message>
        <source>Measure from the wire&apos;s free end to ground.</source>
        <translation>Vom freien Drahtende nach Masse messen.</translation>
    </message>
    <message>
        <source>And to the neighbours of {from}.</source>
        <translation>Und zu den Nachbarn von {from}.</translation>
    </message>
    <message>
        <source>Fix the wire with a spot of mask within 2 mm of the joint.</source>
        <translation>Draht binnen 2 mm der Lötstelle mit einem Tupfer Lack fixieren.</translation>
    </message>
    <message>
        <source>Cure it before anything pulls on the small part.</source>
        <translation>Härten, bevor etwas am kleinen Bauteil zieht.</translation>
    </message>
    <message>
        <source>Lay the wire along the way in the picture ({length}), flat on the board.</source>
        <translation>Draht auf dem Weg im Bild verlegen ({length}), flach auf der Platine.</translation>
    </message>
    <message>
        <source>Nothing beside connectors, over the battery or under a shield wall.</source>
        <translation>Nichts neben Steckern, über dem Akku oder unter einer Schirmwand.</translation>
    </message>
    <message>
        <source>Inside the opened margin lead the wire straight out, as drawn.</source>
        <translation>Im geöffneten Abstand den Draht gerade hinausführen, wie gezeichnet.</translation>
    </message>
    <message>
        <source>Hold it down with mask there.</source>
        <translation>Dort mit Lack festhalten.</translation>
    </message>
    <message>
        <source>Fix the wire with mask at the {tacks} places marked and cure.</source>
        <translation>Draht an den {tacks} markierten Stellen mit Lack fixieren und härten.</translation>
    </message>
    <message>
        <source>Eyes away from the UV lamp.</source>
        <translation>Augen weg von der UV-Lampe.</translation>
    </message>
    <message>
        <source>Close shield and lids and plug all assemblies.</source>
        <translation>Schirm und Deckel schließen und alle Baugruppen stecken.</translation>
    </message>
    <message>
        <source>Look once more along the wire.</source>
        <translation>Nochmals am Draht entlang schauen.</translation>
    </message>
    <message>
        <source>Try the function at full speed, not only at rest.</source>
        <translation>Funktion bei vollem Tempo erproben, nicht nur in Ruhe.</translation>
    </message>
    <message>
        <source>The line has a warning: see the wire&apos;s remarks.</source>
        <translation>Die Leitung hat eine Warnung: siehe Bemerkungen zum Draht.</translation>
    </message>
    <message>
        <source>Power the board from a supply with a current limit, then try the function.</source>
        <translation>Platine mit Strombegrenzung speisen, dann die Funktion erproben.</translation>
    </message>
    <message>
        <source>Watch the current at start.</source>
        <translation>Anlaufstrom beobachten.</translation>
    </message>
    <message>
        <source>Clean the place with isopropyl alcohol and a soft brush.</source>
        <translation>Stelle mit Isopropanol und weichem Pinsel reinigen.</translation>
    </message>
    <message>
        <source>Let it dry before any heat.</source>
        <translation>Vor jeder Hitze trocknen lassen.</translation>
    </message>
    <message>
        <source>Flux {target} and heat it until the solder flows.</source>
        <translation>{target} mit Flussmittel erhitzen, bis das Lot fließt.</translation>
    </message>
    <message>
        <source>Solder wets pad and leg; add little fresh solder. Start low; the paste&apos;s and the part&apos;s data sheets come first. Mind underfilled chips, plastic connectors and batteries near the heat.</source>
        <translation>Lot benetzt Lötfläche und Anschluss; wenig frisches Lot zugeben. Niedrig beginnen; Datenblätter von Paste und Bauteil gehen vor. Auf unterfüllte Chips, Kunststoffstecker und Akkus nahe der Hitze achten.</translation>
    </message>
    <message>
        <source>Take {target} off when all its joints are molten; never pull.</source>
        <translation>{target} abnehmen, wenn alle Lötstellen flüssig sind; nie ziehen.</translation>
    </message>
    <message>
        <source>First mask or shield what stands near, preheat, and flux.</source>
        <translation>Vorher die Umgebung abdecken oder abschirmen, vorheizen, Flussmittel.</translation>
    </message>
    <message>
        <source>Lay out the new part: same value, size, rating.</source>
        <translation>Das neue Bauteil bereitlegen: gleicher Wert, gleiche Größe, gleiche Nenndaten.</translation>
    </message>
    <message>
        <source>Fit the new part in the right direction.</source>
        <translation>Neues Bauteil in richtiger Richtung einsetzen.</translation>
    </message>
    <message>
        <source>Little solder, start low; its data sheet comes first.</source>
        <translation>Wenig Lot, niedrig beginnen; das Datenblatt geht vor.</translation>
    </message>
    <message>
        <source>Soak {target} with isopropyl alcohol and brush off residue and corrosion.</source>
        <translation>{target} mit Isopropanol einweichen, Rückstände und Korrosion abbürsten.</translation>
    </message>
    <message>
        <source>Rinse, and blow out from under parts.</source>
        <translation>Spülen und unter den Bauteilen ausblasen.</translation>
    </message>
    <message>
        <source>Dry with warm air until no solvent is left.</source>
        <translation>Mit Warmluft trocknen, bis kein Lösemittel bleibt.</translation>
    </message>
    <message>
        <source>No heat above what the data sheets allow.</source>
        <translation>Keine Hitze über das hinaus, was die Datenblätter erlauben.</translation>
    </message>
    <message>
        <source>Cut through mask and copper twice, side by side, and lift out the strip.</source>
        <translation>Lack und Kupfer zweimal nebeneinander durchtrennen, den Streifen abheben.</translation>
    </message>
    <message>
        <source>With a sharp blade; do not go deeper than this layer.</source>
        <translation>Mit scharfer Klinge; nicht tiefer als diese Lage.</translation>
    </message>
    <message>
        <source>Make sure that nothing of the customer&apos;s is lost.</source>
        <translation>Sicherstellen, dass nichts vom Kunden verloren geht.</translation>
    </message>
    <message>
        <source>Data, parts taken off, screws, seals.</source>
        <translation>Daten, abgenommene Teile, Schrauben, Siegel.</translation>
    </message>
    <message>
        <source>Put the board back as received and mark what was changed.</source>
        <translation>Platine wie erhalten zurücksetzen und Geändertes markieren.</translation>
    </message>
    <message>
        <source>Leave the battery disconnected where it is unsafe.</source>
        <translation>Den Akku abgesteckt lassen, wo er unsicher ist.</translation>
    </message>
    <message>
        <source>Tell the customer the findings and the reason.</source>
        <translation>Dem Kunden Befund und Grund nennen.</translation>
    </message>
    <message>
        <source>And what a replacement would cost instead.</source>
        <translation>Und was ein Ersatz kosten würde.</translation>
    </message>
    <message>
        <source>Cuts what is left to a third.</source>
        <translation>Senkt den Rest auf ein Drittel.</translation>
    </message>
    <message>
        <source>copper area {}</source>
        <translation>Kupferfläche {}</translation>
    </message>
    <message>
        <source>fork {}</source>
        <translation>Gabelung {}</translation>
    </message>
    <message>
        <source>Measure resistance from {from} to {to}.</source>
        <translation>Widerstand von {from} nach {to} messen.</translation>
    </message>
    <message>
        <source>With zeroed leads.</source>
        <translation>Mit genullten Prüfleitungen.</translation>
    </message>
    <message>
        <source>it must be {}</source>
        <translation>es muss {} sein</translation>
    </message>
    <message>
        <source>nothing was taken back</source>
        <translation>nichts wurde zurückgenommen</translation>
    </message>
    <message>
        <source>the reading is gone already</source>
        <translation>der Messwert ist schon fort</translation>
    </message>
    <message>
        <source>another board is open</source>
        <translation>eine andere Platine ist offen</translation>
    </message>
    <message>
        <source>was stopped</source>
        <translation>wurde angehalten</translation>
    </message>
    <message>
        <source>{}, comes and goes</source>
        <translation>{}, Wackelkontakt</translation>
    </message>
    <message>
        <source>it read {} before</source>
        <translation>vorher {} gemessen</translation>
    </message>
    <message>
        <source>Cuts what is left to a tenth.</source>
        <translation>Senkt den Rest auf ein Zehntel.</translation>
    </message>
    <message>
        <source>Cuts what is left to a fifth.</source>
        <translation>Senkt den Rest auf ein Fünftel.</translation>
    </message>
    <message>
        <source>Right and left: as that side of the board is seen from above.</source>
        <translation>Rechts und links: wie man auf diese Seite der Platine blickt.</translation>
    </message>
    <message>
        <source>reading {}</source>
        <translation>Messung {}</translation>
    </message>
    <message>
        <source>repair {}</source>
        <translation>Reparatur {}</translation>
    </message>
    <message>
        <source>photo {}</source>
        <translation>Foto {}</translation>
    </message>
    <message>
        <source>charge {}</source>
        <translation>Posten {}</translation>
    </message>
    <message>
        <source>board used: {}</source>
        <translation>verwendete Platine: {}</translation>
    </message>
    <message>
        <source>taken back: {}</source>
        <translation>zurückgenommen: {}</translation>
    </message>
    <message>
        <source>put back: {}</source>
        <translation>wiederhergestellt: {}</translation>
    </message>
    <message>
        <source>repair added: {}</source>
        <translation>Reparatur hinzugefügt: {}</translation>
    </message>
    <message>
        <source>repair added: {}, {}</source>
        <translation>Reparatur hinzugefügt: {}, {}</translation>
    </message>
    <message>
        <source>suspects withdrawn</source>
        <translation>Verdächtige zurückgenommen</translation>
    </message>
    <message numerus="yes">
        <source>{n} suspect found</source>
        <comment>{n} suspects found</comment>
        <translation>
            <numerusform>{n} Verdächtiger gefunden</numerusform>
            <numerusform>{n} Verdächtige gefunden</numerusform>
        </translation>
    </message>
    <message>
        <source>the board is not open any more</source>
        <translation>die Platine ist nicht mehr offen</translation>
    </message>
    <message>
        <source>both clicks are at the same place</source>
        <translation>beide Klicks sind am selben Ort</translation>
    </message>
    <message>
        <source>no size of a board</source>
        <translation>keine Größe einer Platine</translation>
    </message>
    <message>
        <source>how far apart the two are, in mm: 12.7</source>
        <translation>wie weit die beiden auseinander sind, in mm: 12.7</translation>
    </message>
    <message>
        <source>width and height in mm: 84 x 56</source>
        <translation>Breite und Höhe in mm: 84 x 56</translation>
    </message>
    <message>
        <source>is no field of format 2</source>
        <translation>ist kein Feld von Format 2</translation>
    </message>
    <message>
        <source>cannot be replaced: {}</source>
        <translation>kann nicht ersetzt werden: {}</translation>
    </message>
    <message>
        <source>two numbers</source>
        <translation>zwei Zahlen</translation>
    </message>
    <message>
        <source>is no place of a photo</source>
        <translation>ist keine Lage eines Fotos</translation>
    </message>
    <message>
        <source>ten numbers</source>
        <translation>zehn Zahlen</translation>
    </message>
    <message>
        <source>is no script of edits</source>
        <translation>ist kein Skript von Änderungen</translation>
    </message>
    <message>
        <source>is no step of drawing</source>
        <translation>ist kein Schritt beim Zeichnen</translation>
    </message>
    <message>
        <source>is no place</source>
        <translation>ist kein Ort</translation>
    </message>
    <message>
        <source>x and y in millimetres</source>
        <translation>x und y in Millimetern</translation>
    </message>
    <message>
        <source>names no pin, or more than one</source>
        <translation>nennt keinen Pin, oder mehr als einen</translation>
    </message>
    <message>
        <source>top or bottom</source>
        <translation>top oder bottom</translation>
    </message>
    <message>
        <source>too few clicks for what the line says</source>
        <translation>zu wenige Klicks für das, was die Zeile sagt</translation>
    </message>
    <message>
        <source>is no way</source>
        <translation>ist kein Weg</translation>
    </message>
    <message>
        <source>two places or more</source>
        <translation>zwei Orte oder mehr</translation>
    </message>
    <message>
        <source>has no place on the board</source>
        <translation>hat keinen Ort auf der Platine</translation>
    </message>
    <message>
        <source>names no part, or more than one</source>
        <translation>nennt kein Bauteil, oder mehr als eines</translation>
    </message>
    <message>
        <source>a reference, R28</source>
        <translation>eine Bezeichnung, R28</translation>
    </message>
    <message>
        <source>1 3 5 over 2 4 6</source>
        <translation>1 3 5 über 2 4 6</translation>
    </message>
    <message>
        <source>one row after the other</source>
        <translation>eine Reihe nach der anderen</translation>
    </message>
    <message>
        <source>counted round the body</source>
        <translation>rund um den Körper gezählt</translation>
    </message>
    <message>
        <source>A1 A2 over B1 B2</source>
        <translation>A1 A2 über B1 B2</translation>
    </message>
    <message>
        <source>resistor</source>
        <translation>Widerstand</translation>
    </message>
    <message>
        <source>capacitor</source>
        <translation>Kondensator</translation>
    </message>
    <message>
        <source>inductor</source>
        <translation>Spule</translation>
    </message>
    <message>
        <source>ferrite</source>
        <translation>Ferrit</translation>
    </message>
    <message>
        <source>fuse</source>
        <translation>Sicherung</translation>
    </message>
    <message>
        <source>LED</source>
        <translation>LED</translation>
    </message>
    <message>
        <source>chip</source>
        <translation>Chip</translation>
    </message>
    <message>
        <source>crystal</source>
        <translation>Quarz</translation>
    </message>
    <message>
        <source>transistor</source>
        <translation>Transistor</translation>
    </message>
    <message>
        <source>switch</source>
        <translation>Schalter</translation>
    </message>
    <message>
        <source>shield</source>
        <translation>Schirm</translation>
    </message>
    <message>
        <source>part</source>
        <translation>Bauteil</translation>
    </message>
    <message>
        <source>{}, counts up</source>
        <translation>{}, zählt weiter</translation>
    </message>
    <message>
        <source>shield, its outline</source>
        <translation>Schirm, sein Umriss</translation>
    </message>
    <message>
        <source>test pad, counts up</source>
        <translation>Testpunkt, zählt weiter</translation>
    </message>
    <message>
        <source>its name</source>
        <translation>ihr Name</translation>
    </message>
    <message>
        <source>rows</source>
        <translation>Reihen</translation>
    </message>
    <message>
        <source>of {}</source>
        <translation>zu {}</translation>
    </message>
    <message>
        <source>no connector yet</source>
        <translation>noch kein Stecker</translation>
    </message>
    <message>
        <source>type one: J4 40 2 rows</source>
        <translation>einen tippen: J4 40 2 Reihen</translation>
    </message>
    <message>
        <source>{} as a list of {} pins</source>
        <translation>{} als Liste von {} Pins</translation>
    </message>
    <message>
        <source>placed on the photo, each pin is shown</source>
        <translation>auf das Foto gelegt, wird jeder Pin gezeigt</translation>
    </message>
    <message>
        <source>{}: {} pins at their places, {} have a net</source>
        <translation>{}: {} Pins an ihren Orten, {} haben ein Netz</translation>
    </message>
    <message>
        <source>names: click a pin and type, or paste a list</source>
        <translation>Namen: Pin anklicken und tippen, oder eine Liste einfügen</translation>
    </message>
    <message>
        <source>{} leads nowhere yet</source>
        <translation>{} führt noch nirgends hin</translation>
    </message>
    <message>
        <source>a click on its other end is enough</source>
        <translation>ein Klick auf das andere Ende genügt</translation>
    </message>
    <message>
        <source>no copper known for {}: finding works between pins, not along the track</source>
        <translation>für {} ist kein Kupfer bekannt: gesucht wird zwischen Pins, nicht entlang der Leiterbahn</translation>
    </message>
    <message>
        <source>its track, click by click, tells which piece is open</source>
        <translation>seine Leiterbahn, Klick für Klick, sagt, welches Stück offen ist</translation>
    </message>
    <message>
        <source>{}: {} pieces of copper, {} of unknown way</source>
        <translation>{}: {} Stücke Kupfer, {} auf unbekanntem Weg</translation>
    </message>
    <message>
        <source>no line known yet</source>
        <translation>noch keine Leitung bekannt</translation>
    </message>
    <message>
        <source>two pins joined are enough to begin</source>
        <translation>zwei verbundene Pins genügen zum Anfangen</translation>
    </message>
    <message>
        <source>{} lines, {} of them with copper</source>
        <translation>{} Leitungen, {} davon mit Kupfer</translation>
    </message>
    <message>
        <source>copper tells where on the line; without it, between which pins</source>
        <translation>Kupfer sagt, wo auf der Leitung; ohne, zwischen welchen Pins</translation>
    </message>
    <message>
        <source>no landing known yet</source>
        <translation>noch kein Anlötpunkt bekannt</translation>
    </message>
    <message>
        <source>each pad placed is a landing</source>
        <translation>jedes gesetzte Pad ist ein Anlötpunkt</translation>
    </message>
    <message>
        <source>{} landings, no zone: a wire may cross a plug or the battery</source>
        <translation>{} Anlötpunkte, keine Zone: ein Draht kann über einen Stecker oder den Akku führen</translation>
    </message>
    <message>
        <source>a part&apos;s zone: click it, then Z</source>
        <translation>Zone eines Bauteils: anklicken, dann Z</translation>
    </message>
    <message>
        <source>Type what is drawn next, or click a pin</source>
        <translation>Tippen, was als Nächstes kommt, oder einen Pin anklicken</translation>
    </message>
    <message>
        <source>Click pin {1} of {0}</source>
        <translation>Pin {1} von {0} anklicken</translation>
    </message>
    <message>
        <source>Take {} as it lies</source>
        <translation>{} so nehmen, wie es liegt</translation>
    </message>
    <message>
        <source>Click the first end of {}</source>
        <translation>Das erste Ende von {} anklicken</translation>
    </message>
    <message>
        <source>Click the other end of {}</source>
        <translation>Das andere Ende von {} anklicken</translation>
    </message>
    <message>
        <source>Click the first end of the last of {}</source>
        <translation>Das erste Ende des letzten von {} anklicken</translation>
    </message>
    <message>
        <source>Click the test pad</source>
        <translation>Den Testpunkt anklicken</translation>
    </message>
    <message>
        <source>Click the next corner</source>
        <translation>Die nächste Ecke anklicken</translation>
    </message>
    <message>
        <source>Click the next corner, or the first again</source>
        <translation>Die nächste Ecke anklicken, oder wieder die erste</translation>
    </message>
    <message>
        <source>Click where the copy&apos;s first pad goes</source>
        <translation>Anklicken, wohin das erste Pad der Kopie kommt</translation>
    </message>
    <message>
        <source>Click the part, or the zone&apos;s first corner</source>
        <translation>Das Bauteil anklicken, oder die erste Ecke der Zone</translation>
    </message>
    <message>
        <source>Click what belongs to {}</source>
        <translation>Anklicken, was zu {} gehört</translation>
    </message>
    <message>
        <source>Click where {} comes out again</source>
        <translation>Anklicken, wo {} wieder herauskommt</translation>
    </message>
    <message>
        <source>{} is in hand</source>
        <translation>{} ist in der Hand</translation>
    </message>
    <message>
        <source>Enter opens the line. J4 40 2 rows is a connector, R 100 0402 a resistor, U1 64 4 sides a chip. A click on a pin takes its net in hand</source>
        <translation>Enter öffnet die Zeile. J4 40 2 Reihen ist ein Stecker, R 100 0402 ein Widerstand, U1 64 4 Seiten ein Chip. Ein Klick auf einen Pin nimmt sein Netz in die Hand</translation>
    </message>
    <message>
        <source>Its pad&apos;s middle, as well as it is to be seen</source>
        <translation>Die Mitte seines Pads, so gut sie zu sehen ist</translation>
    </message>
    <message>
        <source>Diagonally opposite to the first one</source>
        <translation>Dem ersten schräg gegenüber</translation>
    </message>
    <message>
        <source>Does every frame lie on its pad? A click on the first row&apos;s last pin turns it</source>
        <translation>Liegt jeder Rahmen auf seinem Pad? Ein Klick auf den letzten Pin der ersten Reihe dreht</translation>
    </message>
    <message>
        <source>Pins join without copper. A click beside them draws a track to there, V puts a via, I goes inside. Space: the net is done</source>
        <translation>Pins verbinden sich ohne Kupfer. Ein Klick daneben zieht eine Leiterbahn dorthin, V setzt ein Via, I geht nach innen. Leertaste: Das Netz ist fertig</translation>
    </message>
    <message>
        <source>Drag it to move it. Z makes a zone of it, G says that it is missing, Delete takes it off</source>
        <translation>Ziehen verschiebt es. Z macht eine Zone daraus, G sagt, dass es fehlt, Entf nimmt es weg</translation>
    </message>
    <message>
        <source>From the last two nets: parts and pins count on as they did</source>
        <translation>Aus den letzten zwei Netzen: Bauteile und Pins zählen weiter wie dort</translation>
    </message>
    <message>
        <source>part drawn</source>
        <translation>Bauteil gezeichnet</translation>
    </message>
    <message>
        <source>row of parts drawn</source>
        <translation>Reihe von Bauteilen gezeichnet</translation>
    </message>
    <message>
        <source>parts copied</source>
        <translation>Bauteile kopiert</translation>
    </message>
    <message>
        <source>test pad drawn</source>
        <translation>Testpunkt gezeichnet</translation>
    </message>
    <message>
        <source>pins joined</source>
        <translation>Pins verbunden</translation>
    </message>
    <message>
        <source>net named</source>
        <translation>Netz benannt</translation>
    </message>
    <message>
        <source>net&apos;s role</source>
        <translation>Rolle des Netzes</translation>
    </message>
    <message>
        <source>track drawn</source>
        <translation>Leiterbahn gezeichnet</translation>
    </message>
    <message>
        <source>via drawn</source>
        <translation>Via gezeichnet</translation>
    </message>
    <message>
        <source>run inside the board</source>
        <translation>Weg im Inneren</translation>
    </message>
    <message>
        <source>copper area drawn</source>
        <translation>Kupferfläche gezeichnet</translation>
    </message>
    <message>
        <source>zone drawn</source>
        <translation>Zone gezeichnet</translation>
    </message>
    <message>
        <source>series of nets</source>
        <translation>Reihe von Netzen</translation>
    </message>
    <message>
        <source>gone or there</source>
        <translation>fehlt oder da</translation>
    </message>
    <message>
        <source>taken off</source>
        <translation>weggenommen</translation>
    </message>
    <message>
        <source>pin taken out of its net</source>
        <translation>Pin aus seinem Netz genommen</translation>
    </message>
    <message>
        <source>Ground and a supply are one net now. U takes it back</source>
        <translation>Masse und eine Versorgung sind jetzt ein Netz. U nimmt es zurück</translation>
    </message>
    <message>
        <source>{} is part of {} now. U takes it back</source>
        <translation>{} ist jetzt Teil von {}. U nimmt es zurück</translation>
    </message>
    <message>
        <source>pins</source>
        <translation>Pins</translation>
    </message>
    <message>
        <source>counter-clockwise</source>
        <translation>gegen den Uhrzeigersinn</translation>
    </message>
    <message>
        <source>balls, lettered by rows</source>
        <translation>Kugeln, Reihen nach Buchstaben</translation>
    </message>
    <message>
        <source>mm from pin to pin</source>
        <translation>mm von Pin zu Pin</translation>
    </message>
    <message>
        <source>no pin there</source>
        <translation>dort kein Pin</translation>
    </message>
    <message>
        <source>one at each end</source>
        <translation>eine an jedem Ende</translation>
    </message>
    <message>
        <source>mm along and across the row</source>
        <translation>mm längs und quer zur Reihe</translation>
    </message>
    <message>
        <source>mm, through the board</source>
        <translation>mm, durch die Platine</translation>
    </message>
    <message>
        <source>value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>{} × {} mm</source>
        <translation>{} × {} mm</translation>
    </message>
    <message>
        <source>first to last</source>
        <translation>vom ersten zum letzten</translation>
    </message>
    <message>
        <source>mm above the board</source>
        <translation>mm über der Platine</translation>
    </message>
    <message>
        <source>mm wide</source>
        <translation>mm breit</translation>
    </message>
    <message>
        <source>no wire, with its usual margin</source>
        <translation>kein Draht, mit dem üblichen Abstand</translation>
    </message>
    <message>
        <source>copper, its outline</source>
        <translation>Kupfer, sein Umriss</translation>
    </message>
    <message>
        <source>tracks from now on</source>
        <translation>Leiterbahnen ab jetzt</translation>
    </message>
    <message>
        <source>once more, elsewhere</source>
        <translation>noch einmal, anderswo</translation>
    </message>
    <message>
        <source>with new numbers</source>
        <translation>mit neuen Nummern</translation>
    </message>
    <message>
        <source>left and right changed</source>
        <translation>links und rechts vertauscht</translation>
    </message>
    <message>
        <source>name of the net</source>
        <translation>Name des Netzes</translation>
    </message>
    <message>
        <source>what the net is for</source>
        <translation>wofür das Netz ist</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>{}: drawn with {}, in the file with {}</source>
        <translation>{}: gezeichnet mit {}, in der Datei mit {}</translation>
    </message>
    <message>
        <source>net {}: called {} in the file</source>
        <translation>Netz {}: heißt in der Datei {}</translation>
    </message>
    <message>
        <source>{}: drawn as {}, in the file {}</source>
        <translation>{}: gezeichnet als {}, in der Datei {}</translation>
    </message>
    <message>
        <source>{}: there in the drawing, left out in the file</source>
        <translation>{}: in der Zeichnung da, in der Datei weggelassen</translation>
    </message>
    <message>
        <source>{}: missing in the drawing, fitted in the file</source>
        <translation>{}: fehlt in der Zeichnung, in der Datei bestückt</translation>
    </message>
    <message>
        <source>Only guessed in the drawing, so the file is proposed</source>
        <translation>In der Zeichnung nur vermutet, darum wird die Datei vorgeschlagen</translation>
    </message>
    <message>
        <source>Measured, so the drawing is proposed</source>
        <translation>Gemessen, darum wird die Zeichnung vorgeschlagen</translation>
    </message>
    <message>
        <source>Seen on the board, so the drawing is proposed</source>
        <translation>Auf der Platine gesehen, darum wird die Zeichnung vorgeschlagen</translation>
    </message>
    <message>
        <source>{} pins agree, {} learn their net, {} only in the file, {} only drawn</source>
        <translation>{} Pins stimmen überein, {} bekommen ihr Netz, {} nur in der Datei, {} nur gezeichnet</translation>
    </message>
    <message>
        <source>leads to {}</source>
        <translation>führt zu {}</translation>
    </message>
    <message>
        <source>leads to {} and {} more</source>
        <translation>führt zu {} und {} weiteren</translation>
    </message>
    <message>
        <source>a second size of the same name</source>
        <translation>eine zweite Größe mit demselben Namen</translation>
    </message>
    <message>
        <source>no size at all</source>
        <translation>gar keine Größe</translation>
    </message>
    <message>
        <source>no part to copy</source>
        <translation>kein Bauteil zum Kopieren</translation>
    </message>
    <message>
        <source>has no place that could be copied</source>
        <translation>hat keinen Ort, der kopiert werden könnte</translation>
    </message>
    <message>
        <source>a part has from 1 to 10000 pins</source>
        <translation>ein Bauteil hat von 1 bis 10000 Pins</translation>
    </message>
    <message>
        <source>the pins do not fill four sides</source>
        <translation>die Pins füllen keine vier Seiten</translation>
    </message>
    <message>
        <source>only two rows are counted round the body</source>
        <translation>nur zwei Reihen werden rund um den Körper gezählt</translation>
    </message>
    <message>
        <source>an outline has three corners or more</source>
        <translation>ein Umriss hat drei Ecken oder mehr</translation>
    </message>
    <message>
        <source>has no outline to make a zone of</source>
        <translation>hat keinen Umriss für eine Zone</translation>
    </message>
    <message>
        <source>{} has another number of pins</source>
        <translation>{} hat eine andere Zahl von Pins</translation>
    </message>
    <message>
        <source>too few points to straighten a photo by</source>
        <translation>zu wenige Punkte, um ein Foto zu entzerren</translation>
    </message>
    <message>
        <source>the points lie in a line, or at one place</source>
        <translation>die Punkte liegen auf einer Linie, oder an einem Ort</translation>
    </message>
    <message>
        <source>the points fit no photo of a board</source>
        <translation>die Punkte passen zu keinem Foto einer Platine</translation>
    </message>
    <message numerus="yes">
        <source>{} landings, {n} zone</source>
        <comment>{} landings, {n} zones</comment>
        <translation>
            <numerusform>{} Anlötpunkte, {n} Zone</numerusform>
            <numerusform>{} Anlötpunkte, {n} Zonen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Take {n} more net like these</source>
        <comment>Take {n} more nets like these</comment>
        <translation>
            <numerusform>Noch {n} Netz wie diese nehmen</numerusform>
            <numerusform>Noch {n} Netze wie diese nehmen</numerusform>
        </translation>
    </message>
    <message>
        <source>one click too many for what the line says</source>
        <translation>ein Klick zu viel für das, was die Zeile sagt</translation>
    </message>
    <message>
        <source>what a good board reads here</source>
        <translation>was eine gute Platine hier liest</translation>
    </message>
    <message>
        <source>Track repair</source>
        <translation>Leiterbahn reparieren</translation>
    </message>
    <message>
        <source>Diagnosis only</source>
        <translation>Nur Diagnose</translation>
    </message>
    <message>
        <source>Wire, mask, solvent</source>
        <translation>Draht, Lack, Lösemittel</translation>
    </message>
    <message>
        <source>Return post</source>
        <translation>Rückversand</translation>
    </message>
    <message>
        <source>the camera gives no picture</source>
        <translation>die Kamera gibt kein Bild</translation>
    </message>
    <message>
        <source>no such camera</source>
        <translation>keine solche Kamera</translation>
    </message>
    <message>
        <source>the readings stand where they were taken, as it seems</source>
        <translation>die Messwerte stehen, wie es scheint, wo sie genommen wurden</translation>
    </message>
    <message>
        <source>readings are typed with this key, or the window is used with it</source>
        <translation>mit dieser Taste werden Messwerte getippt oder das Fenster bedient</translation>
    </message>
    <message>
        <source>not a camera&apos;s address</source>
        <translation>keine Adresse einer Kamera</translation>
    </message>
    <message>
        <source>camera:, camera:NAME or file:PATH</source>
        <translation>camera:, camera:NAME oder file:PFAD</translation>
    </message>
    <message>
        <source>is no amount</source>
        <translation>ist kein Betrag</translation>
    </message>
    <message>
        <source>as in &quot;48.00&quot;</source>
        <translation>wie &quot;48.00&quot;</translation>
    </message>
    <message>
        <source>in a track inside the board</source>
        <translation>in einer Leiterbahn im Inneren der Platine</translation>
    </message>
    <message>
        <source>in a track on the board</source>
        <translation>in einer Leiterbahn auf der Platine</translation>
    </message>
    <message>
        <source>in a plated hole between the layers</source>
        <translation>in einer Durchkontaktierung</translation>
    </message>
    <message>
        <source>in a solder joint</source>
        <translation>in einer Lötstelle</translation>
    </message>
    <message>
        <source>in the solder joint of {}</source>
        <translation>in der Lötstelle von {}</translation>
    </message>
    <message>
        <source>in the part {}</source>
        <translation>im Bauteil {}</translation>
    </message>
    <message>
        <source>A track inside the board was open.</source>
        <translation>Eine Leiterbahn im Inneren der Platine war unterbrochen.</translation>
    </message>
    <message>
        <source>A track on the board was open.</source>
        <translation>Eine Leiterbahn auf der Platine war unterbrochen.</translation>
    </message>
    <message>
        <source>A track inside the board was open near {}.</source>
        <translation>Eine Leiterbahn im Inneren der Platine war bei {} unterbrochen.</translation>
    </message>
    <message>
        <source>A track on the board was open near {}.</source>
        <translation>Eine Leiterbahn auf der Platine war bei {} unterbrochen.</translation>
    </message>
    <message>
        <source>A track inside the board was open between {} and {}.</source>
        <translation>Eine Leiterbahn im Inneren der Platine war zwischen {} und {} unterbrochen.</translation>
    </message>
    <message>
        <source>A track on the board was open between {} and {}.</source>
        <translation>Eine Leiterbahn auf der Platine war zwischen {} und {} unterbrochen.</translation>
    </message>
    <message>
        <source>A plated hole between the layers was open.</source>
        <translation>Eine Durchkontaktierung war unterbrochen.</translation>
    </message>
    <message>
        <source>A plated hole between the layers was open near {}.</source>
        <translation>Eine Durchkontaktierung bei {} war unterbrochen.</translation>
    </message>
    <message>
        <source>A solder joint was open.</source>
        <translation>Eine Lötstelle war unterbrochen.</translation>
    </message>
    <message>
        <source>The solder joint of {} was open.</source>
        <translation>Die Lötstelle von {} war unterbrochen.</translation>
    </message>
    <message>
        <source>The part {} was open.</source>
        <translation>Das Bauteil {} war unterbrochen.</translation>
    </message>
    <message>
        <source>The connection between {} and {} was open.</source>
        <translation>Die Verbindung zwischen {} und {} war unterbrochen.</translation>
    </message>
    <message>
        <source>A connection on the board was open.</source>
        <translation>Eine Verbindung auf der Platine war unterbrochen.</translation>
    </message>
    <message>
        <source>The line {} was open between {} and {}.</source>
        <translation>Die Leitung {} war zwischen {} und {} unterbrochen.</translation>
    </message>
    <message>
        <source>The line {} was open between {} and {}, most likely {}.</source>
        <translation>Die Leitung {} war zwischen {} und {} unterbrochen, am wahrscheinlichsten {}.</translation>
    </message>
    <message>
        <source>Pin {} was dead inside its part.</source>
        <translation>Der Pin {} war im Bauteil tot.</translation>
    </message>
    <message>
        <source>A line on the board was shorted to ground.</source>
        <translation>Eine Leitung auf der Platine hatte einen Kurzschluss nach Masse.</translation>
    </message>
    <message numerus="yes">
        <source>{n} point measures other than on good boards.</source>
        <comment>{n} points measure other than on good boards.</comment>
        <translation>
            <numerusform>{n} Punkt misst anders als auf guten Platinen.</numerusform>
            <numerusform>{n} Punkte messen anders als auf guten Platinen.</numerusform>
        </translation>
    </message>
    <message>
        <source>Bridged it with {} mm of wire.</source>
        <translation>Mit {} mm Draht überbrückt.</translation>
    </message>
    <message>
        <source>Bridged {} and {} with {} mm of wire.</source>
        <translation>{} und {} mit {} mm Draht verbunden.</translation>
    </message>
    <message>
        <source>Bridged it with a wire.</source>
        <translation>Mit einem Draht überbrückt.</translation>
    </message>
    <message>
        <source>Bridged {} with a wire.</source>
        <translation>{} mit einem Draht überbrückt.</translation>
    </message>
    <message>
        <source>Resoldered the joint.</source>
        <translation>Lötstelle nachgelötet.</translation>
    </message>
    <message>
        <source>Resoldered {}.</source>
        <translation>{} nachgelötet.</translation>
    </message>
    <message>
        <source>Removed a part.</source>
        <translation>Ein Bauteil ausgelötet.</translation>
    </message>
    <message>
        <source>Removed {}.</source>
        <translation>{} ausgelötet.</translation>
    </message>
    <message>
        <source>Replaced a part.</source>
        <translation>Ein Bauteil getauscht.</translation>
    </message>
    <message>
        <source>Replaced {}.</source>
        <translation>{} getauscht.</translation>
    </message>
    <message>
        <source>Cleaned the board.</source>
        <translation>Platine gereinigt.</translation>
    </message>
    <message>
        <source>Cleaned {}.</source>
        <translation>{} gereinigt.</translation>
    </message>
    <message>
        <source>Cut a track.</source>
        <translation>Eine Leiterbahn getrennt.</translation>
    </message>
    <message>
        <source>Cut the track {}.</source>
        <translation>Leiterbahn {} getrennt.</translation>
    </message>
    <message>
        <source>Not repaired: it would cost more than it is worth.</source>
        <translation>Nicht repariert: Es würde mehr kosten, als es wert ist.</translation>
    </message>
    <message>
        <source>Nothing was repaired.</source>
        <translation>Nichts wurde repariert.</translation>
    </message>
    <message>
        <source>overruled: {}</source>
        <translation>übergangen: {}</translation>
    </message>
    <message>
        <source>{} left</source>
        <translation>{} links</translation>
    </message>
    <message>
        <source>{} right</source>
        <translation>{} rechts</translation>
    </message>
    <message>
        <source>{} up</source>
        <translation>{} oben</translation>
    </message>
    <message>
        <source>{} down</source>
        <translation>{} unten</translation>
    </message>
    <message>
        <source>booked in {}</source>
        <translation>angenommen {}</translation>
    </message>
    <message>
        <source>ready {}</source>
        <translation>fertig {}</translation>
    </message>
    <message>
        <source>Your device</source>
        <translation>Ihr Gerät</translation>
    </message>
    <message>
        <source>{}, repaired</source>
        <translation>{}, repariert</translation>
    </message>
    <message>
        <source>{}, not repaired</source>
        <translation>{}, nicht repariert</translation>
    </message>
    <message>
        <source>Serial </source>
        <translation>Seriennummer </translation>
    </message>
    <message>
        <source>your reference </source>
        <translation>Ihr Zeichen </translation>
    </message>
    <message>
        <source>What you told us</source>
        <translation>Ihre Angabe</translation>
    </message>
    <message>
        <source>What we found</source>
        <translation>Befund</translation>
    </message>
    <message>
        <source>What we did</source>
        <translation>Ausgeführt</translation>
    </message>
    <message>
        <source>Tried, and it works: </source>
        <translation>Erprobt, funktioniert: </translation>
    </message>
    <message>
        <source>Not seen to work: </source>
        <translation>Nicht erprobt: </translation>
    </message>
    <message>
        <source>Repaired by, date</source>
        <translation>Repariert von, Datum</translation>
    </message>
    <message>
        <source>Received by, date</source>
        <translation>Erhalten von, Datum</translation>
    </message>
    <message>
        <source>Shortened to one page; the workshop&apos;s copy has all of it.</source>
        <translation>Auf eine Seite gekürzt; vollständig auf dem Werkstattexemplar.</translation>
    </message>
    <message>
        <source>Good boards</source>
        <translation>Gute Platinen</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Vorher</translation>
    </message>
    <message numerus="yes">
        <source>and {n} more point, of which as it must be now: {}</source>
        <comment>and {n} more points, of which as they must be now: {}</comment>
        <translation>
            <numerusform>und {n} weiterer Punkt, jetzt wie er muss: {}</numerusform>
            <numerusform>und {n} weitere Punkte, jetzt wie sie müssen: {}</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>{n} more charge</source>
        <comment>{n} more charges</comment>
        <translation>
            <numerusform>{n} weiterer Posten</numerusform>
            <numerusform>{n} weitere Posten</numerusform>
        </translation>
    </message>
    <message>
        <source>new wire, {} mm</source>
        <translation>neuer Draht, {} mm</translation>
    </message>
    <message>
        <source>open here</source>
        <translation>hier unterbrochen</translation>
    </message>
    <message>
        <source>Clean {from} and {to}, and lay the copper bare where it is covered.</source>
        <translation>{from} und {to} reinigen und das Kupfer freilegen, wo es bedeckt ist.</translation>
    </message>
    <message>
        <source>No wider than the copper itself; mask what was laid bare beside it.</source>
        <translation>Nicht breiter als das Kupfer selbst; was daneben bloß liegt, mit Maske abdecken.</translation>
    </message>
    <message>
        <source>Measure resistance from {from} to {to}, before any tin.</source>
        <translation>Widerstand von {from} nach {to} messen, vor allem Zinn.</translation>
    </message>
    <message>
        <source>If they hang together already, the wire mends nothing.</source>
        <translation>Hängen sie schon zusammen, hilft der Draht nichts.</translation>
    </message>
    <message>
        <source>More than 10 ohm, or OL</source>
        <translation>Mehr als 10 Ohm, oder OL</translation>
    </message>
    <message>
        <source>Otherwise these places are joined: look for the break elsewhere.</source>
        <translation>Sonst sind die Stellen verbunden: die Unterbrechung liegt woanders.</translation>
    </message>
    <message>
        <source>Cut the wire, strip and tin its ends, and tin {from} and {to}.</source>
        <translation>Draht ablängen, Enden abisolieren und verzinnen, {from} und {to} verzinnen.</translation>
    </message>
    <message>
        <source>Lay the wire flat on the board and solder it to {to}.</source>
        <translation>Draht flach auf die Platine legen und an {to} anlöten.</translation>
    </message>
    <message>
        <source>Nothing beside connectors, over the battery or under a shield wall, and nowhere that the next battery or screen swap would tear it.</source>
        <translation>Nicht neben Steckern, über dem Akku oder unter einer Schirmwand, und nirgends, wo ihn der nächste Akku- oder Displaytausch abreißt.</translation>
    </message>
    <message>
        <source>Less than 1 ohm</source>
        <translation>Weniger als 1 Ohm</translation>
    </message>
    <message>
        <source>Otherwise a joint is bad or the wire is nicked.</source>
        <translation>Sonst ist eine Lötstelle schlecht oder der Draht eingekerbt.</translation>
    </message>
    <message>
        <source>Measure from {from} to ground.</source>
        <translation>Von {from} gegen Masse messen.</translation>
    </message>
    <message>
        <source>OL: the wire leads nowhere yet. Low: solder has run to a neighbour, or this is another line.</source>
        <translation>OL: der Draht führt noch nirgends hin. Niedrig: Lot ist zum Nachbarn gelaufen, oder es ist eine andere Leitung.</translation>
    </message>
    <message>
        <source>Measure from {to} to ground.</source>
        <translation>Von {to} gegen Masse messen.</translation>
    </message>
    <message>
        <source>Otherwise look at the joint and at its neighbours.</source>
        <translation>Sonst die Lötstelle und ihre Nachbarn ansehen.</translation>
    </message>
    <message>
        <source>Measure from {from} and {to} to their neighbours.</source>
        <translation>Von {from} und {to} zu ihren Nachbarn messen.</translation>
    </message>
    <message>
        <source>Fix the wire with mask at its ends and along its way, and cure.</source>
        <translation>Draht an den Enden und unterwegs mit Maske festlegen und aushärten.</translation>
    </message>
    <message>
        <source>Look at {target} under the microscope; take a photo.</source>
        <translation>{target} unter dem Mikroskop ansehen; Foto machen.</translation>
    </message>
    <message>
        <source>Which copper does the solder join? Solder may also lie under the part.</source>
        <translation>Welches Kupfer verbindet das Lot? Es kann auch unter dem Bauteil liegen.</translation>
    </message>
    <message>
        <source>Flux the bridge and draw the solder off with wick or a clean tip.</source>
        <translation>Flussmittel auf die Brücke und das Lot mit Litze oder sauberer Spitze abziehen.</translation>
    </message>
    <message>
        <source>Start low; the part&apos;s data sheet comes first. Mind underfilled chips, plastic connectors and batteries near the heat.</source>
        <translation>Niedrig anfangen; das Datenblatt des Bauteils geht vor. Auf vergossene Chips, Kunststoffstecker und Akkus nahe der Hitze achten.</translation>
    </message>
    <message>
        <source>Let it cool, then clean off the flux and let it dry.</source>
        <translation>Abkühlen lassen, dann das Flussmittel entfernen und trocknen lassen.</translation>
    </message>
    <message>
        <source>Look between the pads from all sides.</source>
        <translation>Von allen Seiten zwischen die Pads sehen.</translation>
    </message>
    <message>
        <source>Bare board between them, a fillet on each</source>
        <translation>Blanke Platine dazwischen, an jedem eine Kehle</translation>
    </message>
    <message>
        <source>Otherwise they are still joined: look under the part, and further along both lines.</source>
        <translation>Sonst sind sie noch verbunden: unter dem Bauteil und weiter an beiden Leitungen suchen.</translation>
    </message>
    <message>
        <source>{target}.</source>
        <translation>{target}.</translation>
    </message>
    <message>
        <source>Take a photo before and after.</source>
        <translation>Vorher und nachher ein Foto machen.</translation>
    </message>
    <message>
        <source>a wire has two ends</source>
        <translation>ein Draht hat zwei Enden</translation>
    </message>
    <message>
        <source>both of them: J4.9 U3.12</source>
        <translation>beide: J4.9 U3.12</translation>
    </message>
    <message>
        <source>{} has no such pin</source>
        <translation>{} hat keinen solchen Pin</translation>
    </message>
    <message>
        <source>a pin of it, as the board numbers them</source>
        <translation>ein Pin davon, wie die Platine sie zählt</translation>
    </message>
    <message>
        <source>two different places belong here</source>
        <translation>hier gehören zwei verschiedene Stellen hin</translation>
    </message>
    <message>
        <source>Mind: {} is on {}, {} on {}. This wire would join two lines.</source>
        <translation>Achtung: {} liegt an {}, {} an {}. Dieser Draht würde zwei Leitungen verbinden.</translation>
    </message>
    <message>
        <source>Solder joined {} and {}.</source>
        <translation>Lot verband {} und {}.</translation>
    </message>
    <message>
        <source>Bridged {} and {} with a wire.</source>
        <translation>{} und {} mit einem Draht überbrückt.</translation>
    </message>
    <message>
        <source>Removed solder between {} and {}.</source>
        <translation>Lot zwischen {} und {} entfernt.</translation>
    </message>
    <message>
        <source>Removed a solder bridge.</source>
        <translation>Eine Lötbrücke entfernt.</translation>
    </message>
    <message>
        <source>Removed a solder bridge at {}.</source>
        <translation>Eine Lötbrücke an {} entfernt.</translation>
    </message>
    <message>
        <source>wire</source>
        <translation>Draht</translation>
    </message>
    <message>
        <source>remove solder bridge</source>
        <translation>Lötbrücke entfernen</translation>
    </message>
    <message>
        <source>other work</source>
        <translation>andere Arbeit</translation>
    </message>
    <message>
        <source>what a good board reads there</source>
        <translation>was eine gute Platine dort misst</translation>
    </message>
    <message>
        <source>OL or {}</source>
        <translation>OL oder {}</translation>
    </message>
    <message>
        <source>ground cannot be short to ground</source>
        <translation>Masse kann nicht kurz nach Masse sein</translation>
    </message>
    <message>
        <source>the net that reads short</source>
        <translation>das Netz, das kurz misst</translation>
    </message>
    <message>
        <source>inside {}</source>
        <translation>in {}</translation>
    </message>
    <message>
        <source>bridge from {} to {}</source>
        <translation>Brücke von {} nach {}</translation>
    </message>
    <message>
        <source>to ground at the edge of its copper area, {}</source>
        <translation>nach Masse am Rand der Kupferfläche, {}</translation>
    </message>
    <message>
        <source>to ground beside {}, gap {}</source>
        <translation>nach Masse neben {}, Abstand {}</translation>
    </message>
    <message>
        <source>OL: that is no short</source>
        <translation>OL: Das ist kein Kurzschluss</translation>
    </message>
    <message>
        <source>the other lead is at {}, not on ground</source>
        <translation>die andere Spitze ist an {}, nicht an Masse</translation>
    </message>
    <message>
        <source>a drop needs the current and the pin where it goes in</source>
        <translation>ein Spannungsabfall braucht den Strom und den Pin, an dem er hineingeht</translation>
    </message>
    <message>
        <source>more than a short has: the line is loaded, not short</source>
        <translation>mehr als ein Kurzschluss hat: Die Leitung ist belastet, nicht kurz</translation>
    </message>
    <message>
        <source>readings of mode &quot;{}&quot; tell nothing of where a short is</source>
        <translation>Messungen der Art „{}“ sagen nicht, wo ein Kurzschluss ist</translation>
    </message>
    <message>
        <source>{} at {}: tells {} of {} bits that are open, in {} s</source>
        <translation>{} an {}: sagt {} von {} offenen Bit, in {} s</translation>
    </message>
    <message>
        <source>start at {}, never above {}</source>
        <translation>mit {} beginnen, nie über {}</translation>
    </message>
    <message>
        <source>the limit is the rating of {}, the lowest of {} nets within reach</source>
        <translation>die Grenze ist die Nennspannung von {}, die niedrigste von {} erreichbaren Netzen</translation>
    </message>
    <message numerus="yes">
        <source>{n} net within reach has no rating entered: until it has, the limit stays here</source>
        <comment>{n} nets within reach have no rating entered: until they have, the limit stays here</comment>
        <translation>
            <numerusform>{n} erreichbares Netz hat keinen Nennwert: Bis dahin bleibt die Grenze hier</numerusform>
            <numerusform>{n} erreichbare Netze haben keinen Nennwert: Bis dahin bleibt die Grenze hier</numerusform>
        </translation>
    </message>
    <message>
        <source>rated {}</source>
        <translation>Nennwert {}</translation>
    </message>
    <message>
        <source>rating not known</source>
        <translation>Nennwert unbekannt</translation>
    </message>
    <message>
        <source>within reach: {} through {}, {}</source>
        <translation>erreichbar: {} durch {}, {}</translation>
    </message>
    <message>
        <source>the line: {}, {}</source>
        <translation>die Leitung: {}, {}</translation>
    </message>
    <message>
        <source>current limit {}</source>
        <translation>Strombegrenzung {}</translation>
    </message>
    <message>
        <source>up by {} every {}, for {} at most, then off</source>
        <translation>um {} erhöhen, alle {}, höchstens {} lang, dann aus</translation>
    </message>
    <message>
        <source>battery and every assembly off the board before the supply goes on</source>
        <translation>Akku und alle Baugruppen von der Platine, bevor das Netzgerät an ist</translation>
    </message>
    <message>
        <source>shorted parts can burst: eye protection on, face away, fumes extracted</source>
        <translation>kurzgeschlossene Bauteile können platzen: Augenschutz auf, Gesicht weg, Dämpfe absaugen</translation>
    </message>
    <message>
        <source>some good rails read almost nothing: compare milliohms with a good board first</source>
        <translation>manche heile Versorgung misst fast nichts: Milliohm erst mit einer guten Platine vergleichen</translation>
    </message>
    <message>
        <source>lifting or isolating a part first may be cheaper than injecting</source>
        <translation>ein Bauteil zuerst abzuheben oder zu trennen kann billiger sein als Strom einzuspeisen</translation>
    </message>
    <message>
        <source>&quot;to_V&quot; above &quot;from_V&quot;</source>
        <translation>„to_V“ über „from_V“</translation>
    </message>
    <message>
        <source>at most 1 together</source>
        <translation>zusammen höchstens 1</translation>
    </message>
    <message>
        <source>inputs have no range</source>
        <translation>Eingänge haben keinen Bereich</translation>
    </message>
    <message>
        <source>less than &quot;mostOhms&quot; of &quot;pullUp&quot;</source>
        <translation>weniger als „mostOhms“ von „pullUp“</translation>
    </message>
    <message>
        <source>shares add up to too much</source>
        <translation>die Anteile ergeben zusammen zu viel</translation>
    </message>
    <message>
        <source>the range is empty</source>
        <translation>der Bereich ist leer</translation>
    </message>
</context>
<context>
    <name>netmend</name>
    <message>
        <source>nothing has been repaired yet</source>
        <translation>noch nichts repariert</translation>
    </message>
    <message>
        <source>%1 reads %2: %3</source>
        <translation>%1 zeigt %2: %3</translation>
    </message>
    <message>
        <source>%1 was left out</source>
        <translation>%1 ausgelassen</translation>
    </message>
    <message>
        <source>%1 has not been read again</source>
        <translation>%1 noch nicht nachgemessen</translation>
    </message>
    <message>
        <source>not seen to work: %1</source>
        <translation>Funktion nicht gesehen: %1</translation>
    </message>
    <message numerus="yes">
        <source>%n work step(s) not ticked</source>
        <translation>
            <numerusform>%n Arbeitsschritt nicht abgehakt</numerusform>
            <numerusform>%n Arbeitsschritte nicht abgehakt</numerusform>
        </translation>
    </message>
    <message>
        <source>no function has been tried</source>
        <translation>keine Funktion erprobt</translation>
    </message>
    <message>
        <source>lay the track open first</source>
        <translation>erst Leiterbahn freilegen</translation>
    </message>
    <message>
        <source>nobody has said how well it can be reached</source>
        <translation>Zugang nicht angegeben</translation>
    </message>
    <message>
        <source>free to touch</source>
        <translation>frei zugänglich</translation>
    </message>
    <message>
        <source>scrape the mask off first</source>
        <translation>erst Lötstopplack abkratzen</translation>
    </message>
    <message>
        <source>lift the lid first</source>
        <translation>erst Deckel abheben</translation>
    </message>
    <message>
        <source>under a part</source>
        <translation>unter einem Bauteil</translation>
    </message>
    <message>
        <source>below half a per cent</source>
        <translation>unter einem halben Prozent</translation>
    </message>
    <message>
        <source>%1, other lead on %2</source>
        <translation>%1, andere Prüfspitze auf %2</translation>
    </message>
    <message>
        <source>%1: red lead here, black lead on %2</source>
        <translation>%1: rote Prüfspitze hier, schwarze auf %2</translation>
    </message>
    <message>
        <source>%1: one lead here, the other on %2</source>
        <translation>%1: eine Prüfspitze hier, die andere auf %2</translation>
    </message>
    <message>
        <source>; the other place: %1</source>
        <translation>; die andere Stelle: %1</translation>
    </message>
    <message>
        <source>%1, about %2 s</source>
        <translation>%1, etwa %2 s</translation>
    </message>
    <message>
        <source>%1, about %2 min</source>
        <translation>%1, etwa %2 min</translation>
    </message>
    <message>
        <source>No suspect</source>
        <translation>Kein Verdacht</translation>
    </message>
    <message>
        <source>This line is sound, %1</source>
        <translation>Leitung in Ordnung, %1</translation>
    </message>
    <message>
        <source>Look at the next odd pin, or at what this line drives. Enter goes back to the walk.</source>
        <translation>Nächsten auffälligen Anschluss ansehen, oder was diese Leitung ansteuert. Enter führt zurück zum Rundgang.</translation>
    </message>
    <message>
        <source>None of these, %1</source>
        <translation>Nichts davon, %1</translation>
    </message>
    <message>
        <source>No single break, dead pin or short explains the readings. Take the odd ones again, look at the board under the microscope. Enter goes back to the walk.</source>
        <translation>Kein einzelner Bruch, toter Anschluss oder Kurzschluss erklärt die Messungen. Auffällige wiederholen, Platine unter dem Mikroskop ansehen. Enter führt zurück zum Rundgang.</translation>
    </message>
    <message>
        <source>Short to ground, %1</source>
        <translation>Kurzschluss nach Masse, %1</translation>
    </message>
    <message>
        <source>Something on the line hangs on ground: look for solder, a cracked capacitor, warmth under current. Enter goes to the repair.</source>
        <translation>Etwas auf der Leitung liegt an Masse: nach Lot, gerissenem Kondensator, Wärme unter Strom suchen. Enter führt zur Reparatur.</translation>
    </message>
    <message>
        <source>Dead pin, %1</source>
        <translation>Toter Anschluss, %1</translation>
    </message>
    <message>
        <source>The part behind the pin has to be replaced or done without. Enter goes to the repair.</source>
        <translation>Das Bauteil hinter dem Anschluss ersetzen oder darauf verzichten. Enter führt zur Reparatur.</translation>
    </message>
    <message>
        <source>Break found, %1</source>
        <translation>Bruch gefunden, %1</translation>
    </message>
    <message>
        <source>Resolder the joint and probe again, or bridge it. Enter goes to the repair.</source>
        <translation>Lötstelle nachlöten und nochmals messen, oder überbrücken. Enter führt zur Reparatur.</translation>
    </message>
    <message>
        <source>Bridge it. Enter goes to the ways to do so.</source>
        <translation>Überbrücken. Enter zeigt die Wege dafür.</translation>
    </message>
    <message>
        <source>Before any reading %1, now %2.</source>
        <translation>Vor jeder Messung %1, jetzt %2.</translation>
    </message>
    <message>
        <source>One of these places; no reading tells them apart:</source>
        <translation>Eine dieser Stellen; keine Messung trennt sie:</translation>
    </message>
    <message>
        <source>Readings for it:</source>
        <translation>Messungen dafür:</translation>
    </message>
    <message>
        <source>Readings against it:</source>
        <translation>Messungen dagegen:</translation>
    </message>
    <message>
        <source>No reading on this line yet.</source>
        <translation>Noch keine Messung auf dieser Leitung.</translation>
    </message>
    <message>
        <source>Readings that say nothing for or against it: %1.</source>
        <translation>Messungen ohne Aussage dazu: %1.</translation>
    </message>
    <message>
        <source>Not known: %1.</source>
        <translation>Nicht bekannt: %1.</translation>
    </message>
    <message>
        <source>Not used: the reading at %1, %2.</source>
        <translation>Nicht verwendet: Messung bei %1, %2.</translation>
    </message>
    <message>
        <source>Walk the good board: %1 is next</source>
        <translation>Gute Platine messen: %1 ist dran</translation>
    </message>
    <message>
        <source>Walk: touch %1</source>
        <translation>Messen: Prüfspitze auf %1</translation>
    </message>
    <message>
        <source>Choose what to walk</source>
        <translation>Wählen, was gemessen wird</translation>
    </message>
    <message>
        <source>No odd pin here: walk another connector</source>
        <translation>Hier kein auffälliger Anschluss: anderen Stecker messen</translation>
    </message>
    <message>
        <source>Book in</source>
        <translation>Annehmen</translation>
    </message>
    <message>
        <source>Board</source>
        <translation>Platine</translation>
    </message>
    <message>
        <source>Walk</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>Find</source>
        <translation>Finden</translation>
    </message>
    <message>
        <source>Bridge</source>
        <translation>Brücke</translation>
    </message>
    <message>
        <source>Prove</source>
        <translation>Nachweis</translation>
    </message>
    <message>
        <source>Hand over</source>
        <translation>Übergabe</translation>
    </message>
    <message>
        <source>The board is being read</source>
        <translation>Platine wird gelesen</translation>
    </message>
    <message>
        <source>Drop a board file, or type its connector: J4, 40 pins, two rows</source>
        <translation>Platinendatei hierher ziehen, oder Stecker eingeben: J4, 40 Pins, zwei Reihen</translation>
    </message>
    <message>
        <source>The readings are being weighed</source>
        <translation>Messungen werden gewichtet</translation>
    </message>
    <message>
        <source>Probe %1</source>
        <translation>Prüfspitze auf %1</translation>
    </message>
    <message>
        <source>Choose how to repair it</source>
        <translation>Reparatur wählen</translation>
    </message>
    <message>
        <source>Prove it: %1</source>
        <translation>Nachweisen: %1</translation>
    </message>
    <message>
        <source>Write down device and symptom for the sheet</source>
        <translation>Gerät und Symptom für das Blatt aufschreiben</translation>
    </message>
    <message numerus="yes">
        <source>%n joint(s)</source>
        <translation>
            <numerusform>Lötstelle</numerusform>
            <numerusform>%n Lötstellen</numerusform>
        </translation>
    </message>
    <message>
        <source>track %1 mm</source>
        <translation>Leiterbahn %1 mm</translation>
    </message>
    <message>
        <source>track</source>
        <translation>Leiterbahn</translation>
    </message>
    <message numerus="yes">
        <source>%n via(s)</source>
        <translation>
            <numerusform>Via</numerusform>
            <numerusform>%n Vias</numerusform>
        </translation>
    </message>
    <message>
        <source>way not known</source>
        <translation>Weg unbekannt</translation>
    </message>
    <message>
        <source>part</source>
        <translation>Bauteil</translation>
    </message>
    <message>
        <source>Everywhere</source>
        <translation>Überall</translation>
    </message>
    <message>
        <source>digits, Enter</source>
        <translation>Ziffern, Enter</translation>
    </message>
    <message>
        <source>OL</source>
        <translation>OL</translation>
    </message>
    <message>
        <source>skip the point</source>
        <translation>Punkt auslassen</translation>
    </message>
    <message>
        <source>back to the point before</source>
        <translation>zurück zum Punkt davor</translation>
    </message>
    <message>
        <source>take the last thing back</source>
        <translation>das Letzte zurücknehmen</translation>
    </message>
    <message>
        <source>good board or job&apos;s board</source>
        <translation>gute Platine oder die des Auftrags</translation>
    </message>
    <message>
        <source>keep the good walk</source>
        <translation>Messung der guten Platine behalten</translation>
    </message>
    <message>
        <source>take the linked meter&apos;s value</source>
        <translation>Wert des verbundenen Messgeräts übernehmen</translation>
    </message>
    <message>
        <source>turn, mirror the connector&apos;s picture</source>
        <translation>Bild des Steckers drehen, spiegeln</translation>
    </message>
    <message>
        <source>a reading at the next probe</source>
        <translation>ein Wert am nächsten Messpunkt</translation>
    </message>
    <message>
        <source>can&apos;t reach it</source>
        <translation>nicht erreichbar</translation>
    </message>
    <message>
        <source>reach all again</source>
        <translation>alle wieder erreichbar</translation>
    </message>
    <message>
        <source>a reading elsewhere</source>
        <translation>ein Wert anderswo</translation>
    </message>
    <message>
        <source>arrows, Home</source>
        <translation>Pfeile, Pos1</translation>
    </message>
    <message>
        <source>along the line&apos;s tree</source>
        <translation>den Baum der Leitung entlang</translation>
    </message>
    <message>
        <source>through the suspects</source>
        <translation>durch die Verdächtigen</translation>
    </message>
    <message>
        <source>open what is folded; go on when probing has come to its end</source>
        <translation>Gefaltetes öffnen; weiter, wenn fertig gemessen ist</translation>
    </message>
    <message>
        <source>another line</source>
        <translation>andere Leitung</translation>
    </message>
    <message>
        <source>show a proposal</source>
        <translation>Vorschlag zeigen</translation>
    </message>
    <message>
        <source>accept it</source>
        <translation>Vorschlag annehmen</translation>
    </message>
    <message>
        <source>back to the work steps</source>
        <translation>zurück zu den Arbeitsschritten</translation>
    </message>
    <message>
        <source>tick the step off</source>
        <translation>Schritt abhaken</translation>
    </message>
    <message>
        <source>what a check reads; other words are a note</source>
        <translation>Wert einer Prüfung; andere Worte werden Notiz</translation>
    </message>
    <message>
        <source>step before</source>
        <translation>Schritt davor</translation>
    </message>
    <message>
        <source>another repair</source>
        <translation>andere Reparatur</translation>
    </message>
    <message>
        <source>a reading, next to what it was before</source>
        <translation>ein Wert, neben dem von vorher</translation>
    </message>
    <message>
        <source>as at the walk</source>
        <translation>wie beim Messen</translation>
    </message>
    <message>
        <source>functions to try</source>
        <translation>Funktionen, die zu prüfen sind</translation>
    </message>
    <message>
        <source>tick what works</source>
        <translation>abhaken, was geht</translation>
    </message>
    <message>
        <source>take a function out</source>
        <translation>Funktion herausnehmen</translation>
    </message>
    <message>
        <source>print the sheet</source>
        <translation>Blatt drucken</translation>
    </message>
    <message>
        <source>save it as PDF</source>
        <translation>als PDF speichern</translation>
    </message>
    <message>
        <source>handed over</source>
        <translation>übergeben</translation>
    </message>
    <message>
        <source>take a charge or photo out</source>
        <translation>Posten oder Foto herausnehmen</translation>
    </message>
    <message>
        <source>Map</source>
        <translation>Karte</translation>
    </message>
    <message>
        <source>arrows</source>
        <translation>Pfeile</translation>
    </message>
    <message>
        <source>move</source>
        <translation>verschieben</translation>
    </message>
    <message>
        <source>zoom</source>
        <translation>vergrößern, verkleinern</translation>
    </message>
    <message>
        <source>all of it</source>
        <translation>alles zeigen</translation>
    </message>
    <message>
        <source>other side</source>
        <translation>andere Seite</translation>
    </message>
    <message>
        <source>see through</source>
        <translation>durchsehen</translation>
    </message>
    <message>
        <source>a quarter turn right, left</source>
        <translation>Vierteldrehung rechts, links</translation>
    </message>
    <message>
        <source>turn a little</source>
        <translation>ein wenig drehen</translation>
    </message>
    <message>
        <source>measure</source>
        <translation>messen</translation>
    </message>
    <message>
        <source>take what is in the middle</source>
        <translation>nehmen, was in der Mitte ist</translation>
    </message>
    <message>
        <source>Footswitch and mouse</source>
        <translation>Fußschalter und Maus</translation>
    </message>
    <message>
        <source>footswitch</source>
        <translation>Fußschalter</translation>
    </message>
    <message>
        <source>back, forward</source>
        <translation>zurück, vor</translation>
    </message>
    <message>
        <source>mouse buttons: back to the point before, skip</source>
        <translation>Maustasten: zurück zum Punkt davor, auslassen</translation>
    </message>
    <message>
        <source>middle</source>
        <translation>Mitte</translation>
    </message>
    <message>
        <source>mouse button: take the linked meter&apos;s value</source>
        <translation>Maustaste: Wert des verbundenen Messgeräts übernehmen</translation>
    </message>
    <message>
        <source>a reading: 452, 452m, .452 and 0,452 are the same</source>
        <translation>ein Wert: 452, 452m, .452 und 0,452 sind dasselbe</translation>
    </message>
    <message>
        <source>to the next thing to do</source>
        <translation>zum Nächsten, was zu tun ist</translation>
    </message>
    <message>
        <source>search all jobs</source>
        <translation>alle Aufträge durchsuchen</translation>
    </message>
    <message>
        <source>open the job that is marked</source>
        <translation>den markierten Auftrag öffnen</translation>
    </message>
    <message>
        <source>open a board file</source>
        <translation>Platinendatei öffnen</translation>
    </message>
    <message>
        <source>words, Enter</source>
        <translation>Worte, Enter</translation>
    </message>
    <message>
        <source>a connector: J4, 40 pins, two rows</source>
        <translation>ein Stecker: J4, 40 Pins, zwei Reihen</translation>
    </message>
    <message>
        <source>walk the part that is marked</source>
        <translation>das markierte Bauteil messen</translation>
    </message>
    <message>
        <source>the tree larger, smaller</source>
        <translation>den Baum größer, kleiner</translation>
    </message>
    <message>
        <source>stop reading a board</source>
        <translation>Lesen einer Platine abbrechen</translation>
    </message>
    <message>
        <source>add photos</source>
        <translation>Fotos hinzufügen</translation>
    </message>
    <message>
        <source>the last reading was no slip: it comes and goes</source>
        <translation>der letzte Messwert war kein Abrutschen: Wackelkontakt</translation>
    </message>
    <message>
        <source>draw the board</source>
        <translation>die Platine zeichnen</translation>
    </message>
    <message>
        <source>Drawing the board</source>
        <translation>Die Platine zeichnen</translation>
    </message>
    <message>
        <source>the line: what is drawn next, or the name of the net in hand</source>
        <translation>die Zeile: was als Nächstes gezeichnet wird, oder der Name des Netzes in der Hand</translation>
    </message>
    <message>
        <source>click</source>
        <translation>Klick</translation>
    </message>
    <message>
        <source>a pin takes its net in hand, or joins it; beside pins a track is drawn to there</source>
        <translation>ein Pin nimmt sein Netz in die Hand oder kommt dazu; daneben wird eine Leiterbahn dorthin gezogen</translation>
    </message>
    <message>
        <source>press on a pin, draw, let go</source>
        <translation>auf einem Pin drücken, ziehen, loslassen</translation>
    </message>
    <message>
        <source>a track along the copper</source>
        <translation>eine Leiterbahn entlang dem Kupfer</translation>
    </message>
    <message>
        <source>take what is proposed, or not</source>
        <translation>nehmen, was vorgeschlagen ist, oder nicht</translation>
    </message>
    <message>
        <source>the net is done</source>
        <translation>das Netz ist fertig</translation>
    </message>
    <message>
        <source>copper between the last two pins; another way</source>
        <translation>Kupfer zwischen den letzten zwei Pins; anders herum</translation>
    </message>
    <message>
        <source>a via at the pointer; from here inside the board</source>
        <translation>ein Via am Zeiger; von hier im Inneren der Platine</translation>
    </message>
    <message>
        <source>and so on, as the last two nets</source>
        <translation>und so weiter, wie die letzten zwei Netze</translation>
    </message>
    <message>
        <source>silent: the next pin to touch</source>
        <translation>stumm: der nächste Pin zum Berühren</translation>
    </message>
    <message>
        <source>a zone of the part in hand; part or pad is gone</source>
        <translation>eine Zone des Bauteils in der Hand; Bauteil oder Pad fehlt</translation>
    </message>
    <message>
        <source>take off what is in hand</source>
        <translation>wegnehmen, was in der Hand ist</translation>
    </message>
    <message>
        <source>held: the photo alone</source>
        <translation>gehalten: nur das Foto</translation>
    </message>
    <message>
        <source>lay the photo by more places</source>
        <translation>das Foto an weiteren Orten ausrichten</translation>
    </message>
    <message>
        <source>Shift, Ctrl, Alt and the wheel</source>
        <translation>Umschalt, Strg, Alt und das Rad</translation>
    </message>
    <message>
        <source>track&apos;s width; photo fainter; photo lighter</source>
        <translation>Breite der Leiterbahn; Foto blasser; Foto heller</translation>
    </message>
    <message>
        <source>a photo, or a list of pins and nets</source>
        <translation>ein Foto, oder eine Liste von Pins und Netzen</translation>
    </message>
    <message>
        <source>Black lead here, red on %1</source>
        <translation>Schwarz hierher, rot an %1</translation>
    </message>
    <message>
        <source>Good board walked: keep it</source>
        <translation>Gute Platine gemessen: behalten</translation>
    </message>
    <message>
        <source>Walk a good board, so that there is something to compare with</source>
        <translation>Gute Platine messen, damit es einen Vergleich gibt</translation>
    </message>
    <message>
        <source>Once more: %1</source>
        <translation>Noch einmal: %1</translation>
    </message>
    <message>
        <source>Charges, print the sheet, then hand it over</source>
        <translation>Kosten, Blatt drucken, dann übergeben</translation>
    </message>
    <message>
        <source>Handed over. Book in the next job</source>
        <translation>Übergeben. Nächsten Auftrag annehmen</translation>
    </message>
    <message>
        <source>what its file left open</source>
        <translation>was die Datei offen lässt</translation>
    </message>
    <message>
        <source>a board you had</source>
        <translation>eine frühere Platine</translation>
    </message>
    <message>
        <source>move readings that stand one pin beside where they were taken</source>
        <translation>Messwerte rücken, die einen Pin daneben stehen</translation>
    </message>
    <message>
        <source>hear what was read and what is due</source>
        <translation>anhören, was gemessen wurde und was ansteht</translation>
    </message>
    <message>
        <source>to the first odd pin, to read it again</source>
        <translation>zum ersten auffälligen Stift, um ihn noch einmal zu messen</translation>
    </message>
    <message>
        <source>another connector or part</source>
        <translation>anderer Stecker oder anderes Bauteil</translation>
    </message>
    <message>
        <source>condition, meter, who measures; how the picture lies</source>
        <translation>Zustand, Messgerät, wer misst; wie das Bild liegt</translation>
    </message>
    <message>
        <source>all suspects, or the first four</source>
        <translation>alle Verdächtigen, oder die ersten vier</translation>
    </message>
    <message>
        <source>the line of that odd pin</source>
        <translation>die Leitung dieses auffälligen Pins</translation>
    </message>
    <message>
        <source>sends any of these keys, or what F9 gives a meaning</source>
        <translation>sendet eine dieser Tasten oder was F9 belegt</translation>
    </message>
    <message>
        <source>none yet</source>
        <translation>noch keine</translation>
    </message>
    <message>
        <source>a repair by hand</source>
        <translation>eine Reparatur von Hand</translation>
    </message>
    <message>
        <source>overrule a check that read wrong, with a reason</source>
        <translation>eine Prüfung mit falschem Wert übergehen, mit Grund</translation>
    </message>
    <message>
        <source>a usual charge, while nothing is typed</source>
        <translation>ein üblicher Posten, solange nichts getippt ist</translation>
    </message>
    <message>
        <source>the other copy, while nothing is typed</source>
        <translation>das andere Exemplar, solange nichts getippt ist</translation>
    </message>
    <message>
        <source>change notes and letterhead</source>
        <translation>Notizen und Briefkopf ändern</translation>
    </message>
    <message>
        <source>whole board, upright</source>
        <translation>ganze Platine, aufrecht</translation>
    </message>
    <message>
        <source>take the value</source>
        <translation>Wert übernehmen</translation>
    </message>
    <message>
        <source>right mouse button</source>
        <translation>rechte Maustaste</translation>
    </message>
    <message>
        <source>middle mouse button</source>
        <translation>mittlere Maustaste</translation>
    </message>
    <message>
        <source>mouse button %1</source>
        <translation>Maustaste %1</translation>
    </message>
</context>
<context>
    <name>netmend::BenchDrawing</name>
    <message>
        <source>The list names no pin of this board: a pin and its net on each line, J4.3 KEY</source>
        <translation>Die Liste nennt keinen Pin dieser Platine: ein Pin und sein Netz je Zeile, J4.3 KEY</translation>
    </message>
    <message>
        <source>list of nets</source>
        <translation>Liste von Netzen</translation>
    </message>
    <message numerus="yes">
        <source>%n pin(s) named</source>
        <translation>
            <numerusform>%n Pin benannt</numerusform>
            <numerusform>%n Pins benannt</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n line(s) name no pin of this board, first: %1</source>
        <translation>
            <numerusform>%n Zeile nennt keinen Pin dieser Platine: %1</numerusform>
            <numerusform>%n Zeilen nennen keinen Pin dieser Platine, zuerst: %1</numerusform>
        </translation>
    </message>
    <message>
        <source>boards merged</source>
        <translation>Platinen zusammengeführt</translation>
    </message>
    <message>
        <source>part moved</source>
        <translation>Bauteil verschoben</translation>
    </message>
    <message>
        <source>photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>photo straightened</source>
        <translation>Foto entzerrt</translation>
    </message>
    <message>
        <source>tones of the photo</source>
        <translation>Töne des Fotos</translation>
    </message>
    <message>
        <source>typed at the drawing</source>
        <translation>beim Zeichnen getippt</translation>
    </message>
    <message>
        <source>known-good value</source>
        <translation>bekannter guter Wert</translation>
    </message>
    <message>
        <source>%1: a good board reads %2</source>
        <translation>%1: eine gute Platine liest %2</translation>
    </message>
</context>
<context>
    <name>netmend::BenchFault</name>
    <message>
        <source>%1 out of reach</source>
        <translation>%1 unerreichbar</translation>
    </message>
</context>
<context>
    <name>netmend::BenchJob</name>
    <message>
        <source>state of the job</source>
        <translation>Stand des Auftrags</translation>
    </message>
    <message>
        <source>reading</source>
        <translation>Messung</translation>
    </message>
    <message>
        <source>board of the job</source>
        <translation>Platine des Auftrags</translation>
    </message>
    <message>
        <source>repair action</source>
        <translation>Reparatur</translation>
    </message>
    <message>
        <source>charge</source>
        <translation>Posten</translation>
    </message>
    <message>
        <source>removal of a charge</source>
        <translation>Entfernen eines Postens</translation>
    </message>
    <message>
        <source>photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>removal of a photo</source>
        <translation>Entfernen eines Fotos</translation>
    </message>
    <message>
        <source>another board</source>
        <translation>andere Platine</translation>
    </message>
    <message>
        <source>The job is closed, with its board: it stands in the list, and Undo opens it again.</source>
        <translation>Der Auftrag ist mit seiner Platine geschlossen: Er steht in der Liste, und Rückgängig öffnet ihn wieder.</translation>
    </message>
    <message>
        <source>connector %1</source>
        <translation>Stecker %1</translation>
    </message>
    <message>
        <source>Taken back: %1</source>
        <translation>Zurückgenommen: %1</translation>
    </message>
    <message>
        <source>Done again: %1</source>
        <translation>Wieder getan: %1</translation>
    </message>
    <message>
        <source>reading at %1</source>
        <translation>Messwert an %1</translation>
    </message>
    <message>
        <source>%1 comes and goes</source>
        <translation>Wackelkontakt an %1</translation>
    </message>
</context>
<context>
    <name>netmend::BenchWalk</name>
    <message>
        <source>reading of the good board at %1</source>
        <translation>Messwert der guten Platine an %1</translation>
    </message>
    <message>
        <source>skipped point</source>
        <translation>übersprungener Punkt</translation>
    </message>
    <message>
        <source>walk of a good board</source>
        <translation>Messgang einer guten Platine</translation>
    </message>
    <message>
        <source>All from %1 on stand one pin beside: was %1 left out? X moves them on</source>
        <translation>Alle ab %1 stehen einen Pin daneben: wurde %1 ausgelassen? X rückt sie weiter</translation>
    </message>
    <message>
        <source>All from %1 on stand one pin beside: was a pin read twice? X moves them back</source>
        <translation>Alle ab %1 stehen einen Pin daneben: wurde ein Pin zweimal gemessen? X rückt sie zurück</translation>
    </message>
    <message>
        <source>readings moved on by one pin</source>
        <translation>Messwerte um einen Pin weitergerückt</translation>
    </message>
    <message>
        <source>readings moved back by one pin</source>
        <translation>Messwerte um einen Pin zurückgerückt</translation>
    </message>
</context>
<context>
    <name>netmend::BenchWindow</name>
    <message>
        <source>Go there</source>
        <translation>Dorthin</translation>
    </message>
    <message>
        <source>Netmend</source>
        <translation>Netmend</translation>
    </message>
    <message>
        <source>%1, done</source>
        <translation>%1, erledigt</translation>
    </message>
    <message>
        <source>No job</source>
        <translation>Kein Auftrag</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederholen</translation>
    </message>
    <message>
        <source>Search all jobs</source>
        <translation>Alle Aufträge durchsuchen</translation>
    </message>
    <message>
        <source>Find on the map</source>
        <translation>Auf der Karte suchen</translation>
    </message>
    <message>
        <source>Keyboard to the map</source>
        <translation>Tastatur zur Karte</translation>
    </message>
    <message>
        <source>Keyboard back to the station</source>
        <translation>Tastatur zurück zur Station</translation>
    </message>
    <message>
        <source>Link a meter</source>
        <translation>Messgerät verbinden</translation>
    </message>
    <message>
        <source>Light, dark, high contrast</source>
        <translation>Hell, dunkel, hoher Kontrast</translation>
    </message>
    <message>
        <source>Larger</source>
        <translation>Größer</translation>
    </message>
    <message>
        <source>Smaller</source>
        <translation>Kleiner</translation>
    </message>
    <message>
        <source>Tones on or off</source>
        <translation>Töne an oder aus</translation>
    </message>
    <message>
        <source>Tones on</source>
        <translation>Töne an</translation>
    </message>
    <message>
        <source>Tones off</source>
        <translation>Töne aus</translation>
    </message>
    <message>
        <source>Speech on or off</source>
        <translation>Sprache an oder aus</translation>
    </message>
    <message>
        <source>Speech on</source>
        <translation>Sprache an</translation>
    </message>
    <message>
        <source>Speech off</source>
        <translation>Sprache aus</translation>
    </message>
    <message>
        <source>All keys</source>
        <translation>Alle Tasten</translation>
    </message>
    <message>
        <source>Letters at %1 %</source>
        <translation>Schrift auf %1 %</translation>
    </message>
    <message>
        <source>meter ready</source>
        <translation>Messgerät bereit</translation>
    </message>
    <message>
        <source>No meter is linked: type the value, or link one (Ctrl+M)</source>
        <translation>Kein Messgerät verbunden: Wert eingeben oder eines verbinden (Strg+M)</translation>
    </message>
    <message>
        <source>Linked meter</source>
        <translation>Verbundenes Messgerät</translation>
    </message>
    <message>
        <source>Address: tcp:HOST, tcp:HOST:PORT, serial:/dev/NAME or serial:/dev/NAME:PATTERN. Empty: no meter.</source>
        <translation>Adresse: tcp:HOST, tcp:HOST:PORT, serial:/dev/NAME oder serial:/dev/NAME:MUSTER. Leer: kein Messgerät.</translation>
    </message>
    <message>
        <source>Values from the meter were lost, and perhaps a touch: is the probe at the pin that is due?</source>
        <translation>Werte vom Messgerät gingen verloren, vielleicht auch eine Berührung: Ist die Prüfspitze am Anschluss, der dran ist?</translation>
    </message>
    <message>
        <source>Why: reasons and figures, on or off</source>
        <translation>Warum: Gründe und Zahlen, ein oder aus</translation>
    </message>
    <message>
        <source>To %1</source>
        <translation>Zu %1</translation>
    </message>
    <message>
        <source>Draw the board, or leave drawing</source>
        <translation>Die Platine zeichnen, oder das Zeichnen verlassen</translation>
    </message>
    <message>
        <source>Paste a photo or a list of nets</source>
        <translation>Ein Foto oder eine Liste von Netzen einfügen</translation>
    </message>
    <message>
        <source>The microscope&apos;s camera</source>
        <translation>Die Kamera des Mikroskops</translation>
    </message>
    <message>
        <source>Address: camera: for the one there is, camera:NAME, or file:PATH of a picture that another program keeps up to date. F8 takes a picture into the job.</source>
        <translation>Adresse: camera: für die vorhandene, camera:NAME oder file:PFAD eines Bildes, das ein anderes Programm laufend erneuert. F8 nimmt ein Bild in den Auftrag auf.</translation>
    </message>
    <message>
        <source>New job</source>
        <translation>Neuer Auftrag</translation>
    </message>
    <message>
        <source>Footswitch: which pedal does what</source>
        <translation>Fußschalter: welches Pedal was tut</translation>
    </message>
    <message>
        <source>Picture of the microscope&apos;s camera into the job</source>
        <translation>Bild der Mikroskopkamera in den Auftrag</translation>
    </message>
    <message>
        <source>Which camera</source>
        <translation>Welche Kamera</translation>
    </message>
    <message>
        <source>turn</source>
        <translation>drehen</translation>
    </message>
    <message>
        <source>whole board</source>
        <translation>ganze Platine</translation>
    </message>
    <message>
        <source>touch</source>
        <translation>antasten</translation>
    </message>
    <message>
        <source>connecting</source>
        <translation>verbindet</translation>
    </message>
    <message>
        <source>no meter</source>
        <translation>kein Messgerät</translation>
    </message>
    <message>
        <source>settling</source>
        <translation>beruhigt sich</translation>
    </message>
    <message>
        <source>rising</source>
        <translation>steigt</translation>
    </message>
    <message>
        <source>hold</source>
        <translation>halten</translation>
    </message>
    <message>
        <source>taken, lift</source>
        <translation>genommen, abheben</translation>
    </message>
</context>
<context>
    <name>netmend::BoardClip</name>
    <message>
        <source>5 mm, top</source>
        <translation>5 mm, Oberseite</translation>
    </message>
    <message>
        <source>5 mm, bottom</source>
        <translation>5 mm, Unterseite</translation>
    </message>
</context>
<context>
    <name>netmend::BoardPage</name>
    <message>
        <source>Stop reading</source>
        <translation>Lesen anhalten</translation>
    </message>
    <message>
        <source>Open a board file</source>
        <translation>Platinendatei öffnen</translation>
    </message>
    <message>
        <source>Connector in one line</source>
        <translation>Stecker in einer Zeile</translation>
    </message>
    <message>
        <source>What the file left open</source>
        <translation>Was die Datei offen lässt</translation>
    </message>
    <message numerus="yes">
        <source>%n pin(s)</source>
        <translation>
            <numerusform>%n Anschluss</numerusform>
            <numerusform>%n Anschlüsse</numerusform>
        </translation>
    </message>
    <message>
        <source>Connector %1</source>
        <translation>Stecker %1</translation>
    </message>
    <message numerus="yes">
        <source>%n part(s)</source>
        <translation>
            <numerusform>%n Bauteil</numerusform>
            <numerusform>%n Bauteile</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n net(s)</source>
        <translation>
            <numerusform>%n Netz</numerusform>
            <numerusform>%n Netze</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n good board(s) walked</source>
        <translation>
            <numerusform>%n gute Platine gemessen</numerusform>
            <numerusform>%n gute Platinen gemessen</numerusform>
        </translation>
    </message>
    <message>
        <source>No nets are known: walk and compare work; finding the place needs them.</source>
        <translation>Keine Netze bekannt: Messen und Vergleichen gehen; die Stelle finden braucht sie.</translation>
    </message>
    <message>
        <source>No copper is known: finding works between pins, not along the track.</source>
        <translation>Kein Kupfer bekannt: Finden geht zwischen Anschlüssen, nicht entlang der Leiterbahn.</translation>
    </message>
    <message>
        <source>Stay with this board</source>
        <translation>Bei dieser Platine bleiben</translation>
    </message>
    <message>
        <source>Open it and close the job</source>
        <translation>Öffnen und Auftrag schließen</translation>
    </message>
    <message>
        <source>%1 is another board. Job %2 has readings of the one that is open.</source>
        <translation>%1 ist eine andere Platine. Auftrag %2 hat Messwerte der offenen.</translation>
    </message>
    <message>
        <source>&amp;Boards in the archive</source>
        <translation>&amp;Platinen im Archiv</translation>
    </message>
    <message>
        <source>Draw it</source>
        <translation>Zeichnen</translation>
    </message>
    <message>
        <source>Drop the board file here</source>
        <translation>Platinendatei hier ablegen</translation>
    </message>
    <message>
        <source>a CAD board, a netlist, a photo, or several at once</source>
        <translation>CAD-Platine, Netzliste, Foto, auch mehrere zugleich</translation>
    </message>
    <message>
        <source>no file? type what you see</source>
        <translation>keine Datei? Eintippen, was zu sehen ist</translation>
    </message>
    <message>
        <source>J4, 40 pins, two rows</source>
        <translation>J4, 40 Pins, zwei Reihen</translation>
    </message>
    <message>
        <source>That is enough for the whole job. What is not known is named as you go.</source>
        <translation>Das genügt für den ganzen Auftrag. Was nicht bekannt ist, bekommt unterwegs seinen Namen.</translation>
    </message>
    <message>
        <source>Boards
you had</source>
        <translation>Frühere
Platinen</translation>
    </message>
    <message>
        <source>Recent boards</source>
        <translation>Frühere Platinen</translation>
    </message>
    <message>
        <source>Part, pin, net or value</source>
        <translation>Bauteil, Anschluss, Netz oder Wert</translation>
    </message>
    <message>
        <source>Search the parts</source>
        <translation>Bauteile durchsuchen</translation>
    </message>
    <message>
        <source>Walk which part</source>
        <translation>Welches Bauteil messen</translation>
    </message>
    <message>
        <source>Walk %1</source>
        <translation>%1 messen</translation>
    </message>
    <message>
        <source>or type:  J4, 40 pins, two rows</source>
        <translation>oder tippen:  J4, 40 Pins, zwei Reihen</translation>
    </message>
    <message>
        <source>Other board</source>
        <translation>Andere Platine</translation>
    </message>
    <message>
        <source>Walk</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>not there any more</source>
        <translation>nicht mehr da</translation>
    </message>
    <message numerus="yes">
        <source>%n good walk(s)</source>
        <translation>
            <numerusform>%n gute Messung</numerusform>
            <numerusform>%n gute Messungen</numerusform>
        </translation>
    </message>
    <message>
        <source>Notes</source>
        <translation>Hinweise</translation>
    </message>
    <message>
        <source>Notes, %1</source>
        <translation>Hinweise, %1</translation>
    </message>
    <message>
        <source>revision %1</source>
        <translation>Revision %1</translation>
    </message>
</context>
<context>
    <name>netmend::BookInPage</name>
    <message>
        <source>New job</source>
        <translation>Neuer Auftrag</translation>
    </message>
    <message>
        <source>&amp;Device</source>
        <translation>&amp;Gerät</translation>
    </message>
    <message>
        <source>Serial</source>
        <translation>Seriennummer</translation>
    </message>
    <message>
        <source>&amp;Symptom</source>
        <translation>&amp;Symptom</translation>
    </message>
    <message>
        <source>&amp;History</source>
        <translation>&amp;Vorgeschichte</translation>
    </message>
    <message>
        <source>As &amp;received</source>
        <translation>&amp;Zustand</translation>
    </message>
    <message>
        <source>&amp;Customer</source>
        <translation>&amp;Kunde</translation>
    </message>
    <message>
        <source>Their reference</source>
        <translation>Ihr Zeichen</translation>
    </message>
    <message>
        <source>&amp;Internal notes</source>
        <translation>&amp;Interne Notizen</translation>
    </message>
    <message>
        <source>Search all jobs  Ctrl+F</source>
        <translation>Alle Aufträge durchsuchen  Strg+F</translation>
    </message>
    <message>
        <source>Search all jobs</source>
        <translation>Alle Aufträge durchsuchen</translation>
    </message>
    <message>
        <source>Only jobs in this state</source>
        <translation>Nur Aufträge in diesem Stand</translation>
    </message>
    <message>
        <source>any state</source>
        <translation>jeder Stand</translation>
    </message>
    <message>
        <source>Jobs</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>no device yet</source>
        <translation>noch kein Gerät</translation>
    </message>
    <message>
        <source>%1   %2
%3 · %4 · %5</source>
        <translation>%1   %2
%3 · %4 · %5</translation>
    </message>
    <message numerus="yes">
        <source>%n reading(s)</source>
        <translation>
            <numerusform>%n Messung</numerusform>
            <numerusform>%n Messungen</numerusform>
        </translation>
    </message>
    <message>
        <source>Kept as you type</source>
        <translation>Wird beim Tippen gesichert</translation>
    </message>
    <message>
        <source>never on the customer&apos;s copy</source>
        <translation>nie auf dem Blatt für den Kunden</translation>
    </message>
    <message>
        <source>Job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>Write what came in</source>
        <translation>Was kam herein?</translation>
    </message>
    <message>
        <source>today</source>
        <translation>heute</translation>
    </message>
    <message>
        <source>yesterday</source>
        <translation>gestern</translation>
    </message>
    <message>
        <source>waits for a good board</source>
        <translation>wartet auf eine gute Platine</translation>
    </message>
</context>
<context>
    <name>netmend::BridgePage</name>
    <message>
        <source>Taken already: lift the lead for the next step</source>
        <translation>Schon gemessen: für den nächsten Schritt die Spitze abheben</translation>
    </message>
    <message>
        <source>Repair by hand</source>
        <translation>Von Hand reparieren</translation>
    </message>
    <message>
        <source>Back to the work steps</source>
        <translation>Zurück zu den Arbeitsschritten</translation>
    </message>
    <message>
        <source>Take %1</source>
        <translation>%1 nehmen</translation>
    </message>
    <message>
        <source>Accept the chosen proposal</source>
        <translation>Gewählten Vorschlag annehmen</translation>
    </message>
    <message>
        <source>BRIDGE %1</source>
        <translation>BRÜCKE %1</translation>
    </message>
</context>
<context>
    <name>netmend::ChargesView</name>
    <message>
        <source>Charge for what</source>
        <translation>Posten wofür</translation>
    </message>
    <message>
        <source>what for</source>
        <translation>wofür</translation>
    </message>
    <message>
        <source>Quantity</source>
        <translation>Menge</translation>
    </message>
    <message>
        <source>Price of one</source>
        <translation>Einzelpreis</translation>
    </message>
    <message>
        <source>Add this charge</source>
        <translation>Diesen Posten dazunehmen</translation>
    </message>
    <message>
        <source>Charges; Delete takes one out</source>
        <translation>Kosten; Entf nimmt einen Posten heraus</translation>
    </message>
    <message>
        <source>Price</source>
        <translation>Preis</translation>
    </message>
    <message>
        <source>Delete takes the marked charge out; Undo brings it back.</source>
        <translation>Entf nimmt den markierten Posten heraus; Rückgängig holt ihn wieder.</translation>
    </message>
    <message>
        <source>too large</source>
        <translation>zu groß</translation>
    </message>
    <message>
        <source>The amount is too large</source>
        <translation>Betrag ist zu groß</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Dazu</translation>
    </message>
    <message>
        <source>Charges</source>
        <translation>Posten</translation>
    </message>
</context>
<context>
    <name>netmend::CopperMap</name>
    <message>
        <source>Copper map</source>
        <translation>Kupferkarte</translation>
    </message>
    <message>
        <source>The picture of the board</source>
        <translation>Bild der Platine</translation>
    </message>
    <message>
        <source>Working out the picture of the board …</source>
        <translation>Bild der Platine wird berechnet …</translation>
    </message>
    <message>
        <source>Drop a board file here, or press Ctrl+O</source>
        <translation>Platinendatei hierher ziehen oder Strg+O drücken</translation>
    </message>
    <message>
        <source>Measure: click the first place, or press Return at the cross</source>
        <translation>Abmessen: erste Stelle anklicken, oder Enter am Kreuz drücken</translation>
    </message>
    <message>
        <source>%1 mm    dx %2    dy %3</source>
        <translation>%1 mm    dx %2    dy %3</translation>
    </message>
    <message>
        <source>net not known</source>
        <translation>Netz unbekannt</translation>
    </message>
    <message>
        <source>connected to nothing</source>
        <translation>nirgends angeschlossen</translation>
    </message>
    <message>
        <source>net without name</source>
        <translation>Netz ohne Namen</translation>
    </message>
    <message>
        <source>net %1</source>
        <translation>Netz %1</translation>
    </message>
    <message>
        <source>%1, %2 mm</source>
        <translation>%1, %2 mm</translation>
    </message>
</context>
<context>
    <name>netmend::DrawLine</name>
    <message>
        <source>What is drawn next</source>
        <translation>Was als Nächstes gezeichnet wird</translation>
    </message>
</context>
<context>
    <name>netmend::DrawView</name>
    <message>
        <source>Merged: %1. One undo takes it back</source>
        <translation>Zusammengeführt: %1. Einmal Rückgängig nimmt es zurück</translation>
    </message>
    <message>
        <source>its places fit within %1 mm: parts and copper come in with theirs</source>
        <translation>seine Orte passen auf %1 mm: Bauteile und Kupfer kommen mit ihren Orten dazu</translation>
    </message>
    <message>
        <source>its places do not fit the drawing&apos;s: parts come in without them, and no copper</source>
        <translation>seine Orte passen nicht zur Zeichnung: Bauteile kommen ohne sie dazu, und kein Kupfer</translation>
    </message>
    <message>
        <source>%1 of %2: which is right?</source>
        <translation>%1 von %2: Was stimmt?</translation>
    </message>
    <message>
        <source>Bring %1 into the drawing</source>
        <translation>%1 in die Zeichnung bringen</translation>
    </message>
    <message>
        <source>What was put off stays as it is drawn. Readings stay with their pins. One undo takes the whole back</source>
        <translation>Was aufgeschoben wurde, bleibt wie gezeichnet. Messwerte bleiben bei ihren Pins. Einmal Rückgängig nimmt alles zurück</translation>
    </message>
    <message>
        <source>A photo of the board</source>
        <translation>Ein Foto der Platine</translation>
    </message>
    <message>
        <source>Photos (*.png *.jpg *.jpeg *.webp)</source>
        <translation>Fotos (*.png *.jpg *.jpeg *.webp)</translation>
    </message>
    <message>
        <source>pasted photo</source>
        <translation>eingefügtes Foto</translation>
    </message>
    <message>
        <source>outline of the board</source>
        <translation>Umriss der Platine</translation>
    </message>
    <message>
        <source>Enter, then the board&apos;s size: 84 x 56</source>
        <translation>Enter, dann die Größe der Platine: 84 x 56</translation>
    </message>
    <message>
        <source>Click corner %1 of the board</source>
        <translation>Ecke %1 der Platine anklicken</translation>
    </message>
    <message>
        <source>From the upper left one clockwise. Two places and Enter with how far apart they are do, too, where the photo was taken from straight above. P: other places</source>
        <translation>Von der oberen linken im Uhrzeigersinn. Zwei Orte und Enter mit ihrem Abstand gehen auch, wo das Foto gerade von oben ist. P: andere Orte</translation>
    </message>
    <message>
        <source>84 x 56</source>
        <translation>84 x 56</translation>
    </message>
    <message>
        <source>Now the same place on the board, %1</source>
        <translation>Jetzt derselbe Ort auf der Platine, %1</translation>
    </message>
    <message>
        <source>Click place %1 in the photo</source>
        <translation>Ort %1 im Foto anklicken</translation>
    </message>
    <message>
        <source>A hole, a pad, a letter that is to be seen in both. Two places turn and scale it, four take out the slant, six the lens; each one more checks those before</source>
        <translation>Ein Loch, ein Pad, ein Buchstabe, die in beiden zu sehen sind. Zwei Orte drehen und skalieren, vier nehmen die Schräge heraus, sechs die Linse; jeder weitere prüft die davor</translation>
    </message>
    <message>
        <source>so many points always fit: one more checks them</source>
        <translation>so viele Punkte passen immer: einer mehr prüft sie</translation>
    </message>
    <message>
        <source>worst place off by %1 mm, number %2</source>
        <translation>schlechtester Ort um %1 mm daneben, Nummer %2</translation>
    </message>
    <message>
        <source>edges straight within %1 mm</source>
        <translation>Kanten gerade auf %1 mm</translation>
    </message>
    <message>
        <source>sharp to %1 px/mm</source>
        <translation>scharf auf %1 px/mm</translation>
    </message>
    <message>
        <source>What is drawn is good for</source>
        <translation>Was gezeichnet ist, taugt für</translation>
    </message>
    <message>
        <source>Type</source>
        <translation>Tippen</translation>
    </message>
    <message>
        <source>Take it</source>
        <translation>Nehmen</translation>
    </message>
    <message>
        <source>Drawing is right</source>
        <translation>Zeichnung stimmt</translation>
    </message>
    <message>
        <source>File is right</source>
        <translation>Datei stimmt</translation>
    </message>
    <message>
        <source>Later</source>
        <translation>Später</translation>
    </message>
    <message>
        <source>Merge</source>
        <translation>Zusammenführen</translation>
    </message>
    <message>
        <source>No merge</source>
        <translation>Nicht zusammenführen</translation>
    </message>
    <message>
        <source>Take</source>
        <translation>Nehmen</translation>
    </message>
    <message>
        <source>Not so</source>
        <translation>So nicht</translation>
    </message>
    <message>
        <source>Next net</source>
        <translation>Nächstes Netz</translation>
    </message>
    <message>
        <source>Copper between</source>
        <translation>Kupfer dazwischen</translation>
    </message>
    <message>
        <source>Other way</source>
        <translation>Anders herum</translation>
    </message>
    <message>
        <source>Via</source>
        <translation>Via</translation>
    </message>
    <message>
        <source>Goes inside</source>
        <translation>Geht nach innen</translation>
    </message>
    <message>
        <source>And so on</source>
        <translation>Und so weiter</translation>
    </message>
    <message>
        <source>Silent, next</source>
        <translation>Stumm, nächster</translation>
    </message>
    <message>
        <source>Zone</source>
        <translation>Zone</translation>
    </message>
    <message>
        <source>Gone</source>
        <translation>Fehlt</translation>
    </message>
    <message>
        <source>Take off</source>
        <translation>Wegnehmen</translation>
    </message>
    <message>
        <source>Photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>%1 is not understood</source>
        <translation>%1 ist nicht verstanden</translation>
    </message>
    <message numerus="yes">
        <source>%n pin(s)</source>
        <translation>
            <numerusform>%n Pin</numerusform>
            <numerusform>%n Pins</numerusform>
        </translation>
    </message>
    <message>
        <source>pitch %1 mm</source>
        <translation>Raster %1 mm</translation>
    </message>
    <message>
        <source>rows %1 mm apart</source>
        <translation>Reihen %1 mm auseinander</translation>
    </message>
    <message>
        <source>track %1 mm wide, Shift and the wheel</source>
        <translation>Leiterbahn %1 mm breit, Umschalt und Rad</translation>
    </message>
    <message>
        <source>Touch next: %1</source>
        <translation>Als Nächstes berühren: %1</translation>
    </message>
    <message>
        <source>J4 40 2 rows  ·  R 100 0402  ·  zone battery</source>
        <translation>J4 40 2 Reihen  ·  R 100 0402  ·  Zone Akku</translation>
    </message>
</context>
<context>
    <name>netmend::FindPage</name>
    <message>
        <source>Line: a net or a pin</source>
        <translation>Leitung: ein Netz oder ein Anschluss</translation>
    </message>
    <message>
        <source>Reading at the next probe</source>
        <translation>Wert der nächsten Messung</translation>
    </message>
    <message>
        <source>452  Enter</source>
        <translation>452  Enter</translation>
    </message>
    <message>
        <source>OL</source>
        <translation>OL</translation>
    </message>
    <message>
        <source>Can&apos;t reach it</source>
        <translation>Nicht erreichbar</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Reach all</source>
        <translation>Alles erreichbar</translation>
    </message>
    <message>
        <source>Reading elsewhere: mode if another, point, value</source>
        <translation>Messung anderswo: Messart falls anders, Punkt, Wert</translation>
    </message>
    <message>
        <source>The reading before is still being weighed</source>
        <translation>Die Messung davor wird noch gewichtet</translation>
    </message>
    <message>
        <source>No board yet: open one at the station before</source>
        <translation>Noch keine Platine: an der Station davor öffnen</translation>
    </message>
    <message>
        <source>No net and no pin is called %1</source>
        <translation>Kein Netz und kein Anschluss heißt %1</translation>
    </message>
    <message numerus="yes">
        <source>%n nets or pins are called so: name a pin of the line that is meant</source>
        <translation>
            <numerusform>%n Netz oder Anschluss heißt so: einen Anschluss der gemeinten Leitung nennen</numerusform>
            <numerusform>%n Netze oder Anschlüsse heißen so: einen Anschluss der gemeinten Leitung nennen</numerusform>
        </translation>
    </message>
    <message>
        <source>No line yet</source>
        <translation>Noch keine Leitung</translation>
    </message>
    <message>
        <source>Line %1</source>
        <translation>Leitung %1</translation>
    </message>
    <message>
        <source>No board yet: open one, or type its connector, at Board</source>
        <translation>Noch keine Platine: öffnen oder Stecker eingeben, bei Platine</translation>
    </message>
    <message>
        <source>No odd pin yet: walk the connector first, or type a net or pin (Ctrl+L)</source>
        <translation>Noch kein auffälliger Anschluss: erst den Stecker messen, oder Netz oder Anschluss eingeben (Strg+L)</translation>
    </message>
    <message>
        <source>No pin of the walk is odd: walk another connector, or type a net or pin (Ctrl+L)</source>
        <translation>Kein Anschluss des Rundgangs ist auffällig: anderen Stecker messen, oder Netz oder Anschluss eingeben (Strg+L)</translation>
    </message>
    <message>
        <source>The readings are being weighed</source>
        <translation>Messungen werden gewichtet</translation>
    </message>
    <message>
        <source>Nothing can be said about this line: name another (Ctrl+L)</source>
        <translation>Über diese Leitung lässt sich nichts sagen: eine andere nennen (Strg+L)</translation>
    </message>
    <message>
        <source>Next probe</source>
        <translation>Nächste Messung</translation>
    </message>
    <message>
        <source>Stop probing</source>
        <translation>Nicht weitermessen</translation>
    </message>
    <message>
        <source>Take again: %1.</source>
        <translation>Wiederholen: %1.</translation>
    </message>
    <message>
        <source>%1 is not on this line: Ctrl+L, Enter looks at its own</source>
        <translation>%1 liegt nicht auf dieser Leitung: Strg+L, Enter zeigt die eigene</translation>
    </message>
    <message>
        <source>Empty: the oddest pin&apos;s line</source>
        <translation>Leer: die Leitung des auffälligsten Anschlusses</translation>
    </message>
    <message>
        <source>Comes and goes</source>
        <translation>Wackelkontakt</translation>
    </message>
    <message>
        <source>%1   (%2)</source>
        <translation>%1   (%2)</translation>
    </message>
    <message>
        <source>Another line</source>
        <translation>Andere Leitung</translation>
    </message>
    <message>
        <source>net or pin   Enter</source>
        <translation>Netz oder Pin   Enter</translation>
    </message>
    <message>
        <source>Elsewhere</source>
        <translation>Woanders</translation>
    </message>
    <message>
        <source>elsewhere: J4.11 0.452</source>
        <translation>woanders: J4.11 0.452</translation>
    </message>
    <message>
        <source>All</source>
        <translation>Alle</translation>
    </message>
    <message>
        <source>Why this probe, and why the suspect is one</source>
        <translation>Warum diese Messung, und warum der Verdacht</translation>
    </message>
    <message>
        <source>FIND %1</source>
        <translation>FINDEN %1</translation>
    </message>
    <message>
        <source>Wait, the reading is being weighed</source>
        <translation>Warten, der Messwert wird ausgewertet</translation>
    </message>
    <message>
        <source>Once more, it may have missed</source>
        <translation>Noch einmal, vielleicht kein Kontakt</translation>
    </message>
    <message>
        <source>Read %1 before.</source>
        <translation>Zeigte vorher %1.</translation>
    </message>
    <message>
        <source>%1 again</source>
        <translation>wieder %1</translation>
    </message>
    <message>
        <source>near %1</source>
        <translation>um %1</translation>
    </message>
    <message>
        <source>leaves</source>
        <translation>lässt</translation>
    </message>
    <message>
        <source>a slip; I: comes and goes</source>
        <translation>abgerutscht; I: kommt und geht</translation>
    </message>
</context>
<context>
    <name>netmend::FunctionChecks</name>
    <message>
        <source>Another function to try</source>
        <translation>Weitere Funktion zu erproben</translation>
    </message>
    <message>
        <source>function to try</source>
        <translation>zu erprobende Funktion</translation>
    </message>
    <message>
        <source>function seen to work</source>
        <translation>Funktion gesehen</translation>
    </message>
    <message>
        <source>tick taken off</source>
        <translation>Haken entfernt</translation>
    </message>
    <message>
        <source>removal of a function</source>
        <translation>Entfernen einer Funktion</translation>
    </message>
    <message>
        <source>no function yet</source>
        <translation>noch keine Funktion</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Dazu</translation>
    </message>
    <message>
        <source>Must work</source>
        <translation>Muss gehen</translation>
    </message>
    <message>
        <source>what should work: Enter</source>
        <translation>was gehen soll: Enter</translation>
    </message>
    <message>
        <source>Function</source>
        <translation>Funktion</translation>
    </message>
    <message>
        <source>%1 (Space ticks it, Delete takes it out)</source>
        <translation>%1 (Leertaste hakt ab, Entf nimmt heraus)</translation>
    </message>
</context>
<context>
    <name>netmend::HandOverPage</name>
    <message>
        <source>Internal notes</source>
        <translation>Interne Notizen</translation>
    </message>
    <message>
        <source>Workshop&apos;s name and address</source>
        <translation>Name und Anschrift der Werkstatt</translation>
    </message>
    <message>
        <source>Handed over</source>
        <translation>Übergeben</translation>
    </message>
    <message>
        <source>Internal notes: never on the customer&apos;s copy</source>
        <translation>Interne Notizen: nie auf dem Kundenexemplar</translation>
    </message>
    <message>
        <source>Workshop&apos;s name and address, for the head of every sheet</source>
        <translation>Name und Anschrift der Werkstatt, für den Kopf jedes Blatts</translation>
    </message>
    <message>
        <source>Print</source>
        <translation>Drucken</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>A4</source>
        <translation>A4</translation>
    </message>
    <message>
        <source>Letter</source>
        <translation>Letter</translation>
    </message>
    <message>
        <source>No job is open</source>
        <translation>Kein Auftrag offen</translation>
    </message>
    <message>
        <source>No sheet without a job</source>
        <translation>Kein Blatt ohne Auftrag</translation>
    </message>
    <message>
        <source>The sheet is being written</source>
        <translation>Blatt wird geschrieben</translation>
    </message>
    <message>
        <source>No sheet: %1</source>
        <translation>Kein Blatt: %1</translation>
    </message>
    <message>
        <source>Another job is open by now: nothing was saved or printed</source>
        <translation>Inzwischen ist ein anderer Auftrag offen: nichts gesichert oder gedruckt</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>Gesichert: %1</translation>
    </message>
    <message>
        <source>The sheet before is still being printed</source>
        <translation>Das Blatt davor wird noch gedruckt</translation>
    </message>
    <message>
        <source>Printed</source>
        <translation>Gedruckt</translation>
    </message>
    <message>
        <source>The sheet is being printed</source>
        <translation>Blatt wird gedruckt</translation>
    </message>
    <message>
        <source>Save the job sheet</source>
        <translation>Auftragsblatt sichern</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <source>job-%1-customer.pdf</source>
        <translation>auftrag-%1-kunde.pdf</translation>
    </message>
    <message>
        <source>job-%1.pdf</source>
        <translation>auftrag-%1.pdf</translation>
    </message>
    <message>
        <source>Job sheet %1</source>
        <translation>Auftragsblatt %1</translation>
    </message>
    <message>
        <source>Returned unrepaired; Undo takes it back</source>
        <translation>Unrepariert zurück; Rückgängig hebt es auf</translation>
    </message>
    <message>
        <source>Handed over; Undo takes it back</source>
        <translation>Übergeben; Rückgängig hebt es auf</translation>
    </message>
    <message>
        <source>Handed over, though the repair is not proved in full; Undo takes it back</source>
        <translation>Übergeben, obwohl die Reparatur nicht ganz nachgewiesen ist; Rückgängig hebt es auf</translation>
    </message>
    <message>
        <source>Customer&apos;s copy</source>
        <translation>Kundenexemplar</translation>
    </message>
    <message>
        <source>Workshop copy</source>
        <translation>Werkstattexemplar</translation>
    </message>
    <message>
        <source>To pay</source>
        <translation>Zu zahlen</translation>
    </message>
    <message>
        <source>Letterhead</source>
        <translation>Briefkopf</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Ändern</translation>
    </message>
    <message>
        <source>Change notes and letterhead</source>
        <translation>Notizen und Briefkopf ändern</translation>
    </message>
    <message>
        <source>Save PDF</source>
        <translation>PDF sichern</translation>
    </message>
    <message>
        <source>PDF</source>
        <translation>PDF</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>NOT REPAIRED</source>
        <translation>NICHT REPARIERT</translation>
    </message>
    <message>
        <source>PROVED</source>
        <translation>NACHGEWIESEN</translation>
    </message>
    <message>
        <source>NOT PROVED</source>
        <translation>NICHT NACHGEWIESEN</translation>
    </message>
    <message numerus="yes">
        <source>%n point(s)</source>
        <translation>
            <numerusform>%n Punkt</numerusform>
            <numerusform>%n Punkte</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n function(s)</source>
        <translation>
            <numerusform>%n Funktion</numerusform>
            <numerusform>%n Funktionen</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n thing(s) open</source>
        <translation>
            <numerusform>%n Punkt offen</numerusform>
            <numerusform>%n Punkte offen</numerusform>
        </translation>
    </message>
    <message>
        <source>No job</source>
        <translation>Kein Auftrag</translation>
    </message>
    <message>
        <source>none yet</source>
        <translation>noch keiner</translation>
    </message>
    <message numerus="yes">
        <source>Workshop copy, %n page(s)</source>
        <translation>
            <numerusform>Werkstattexemplar, %n Seite</numerusform>
            <numerusform>Werkstattexemplar, %n Seiten</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::HandRepairCard</name>
    <message>
        <source>Add</source>
        <translation>Dazu</translation>
    </message>
    <message>
        <source>Add this repair</source>
        <translation>Diese Reparatur dazunehmen</translation>
    </message>
    <message>
        <source>from and to, why: J4.9 U3.12, track torn</source>
        <translation>von und nach, warum: J4.9 U3.12, Leiterbahn gerissen</translation>
    </message>
    <message>
        <source>between what: J4.9 J4.10</source>
        <translation>zwischen was: J4.9 J4.10</translation>
    </message>
    <message>
        <source>what is done, in your words</source>
        <translation>was getan wird, in eigenen Worten</translation>
    </message>
    <message>
        <source>what was found, why it does not pay</source>
        <translation>was gefunden wurde, warum es sich nicht lohnt</translation>
    </message>
    <message>
        <source>on what, why: J4.9, ring around the joint</source>
        <translation>woran, warum: J4.9, Ring um die Lötstelle</translation>
    </message>
</context>
<context>
    <name>netmend::LineTree</name>
    <message numerus="yes">
        <source>%n more pin(s)</source>
        <translation>
            <numerusform>%n weiterer Anschluss</numerusform>
            <numerusform>%n weitere Anschlüsse</numerusform>
        </translation>
    </message>
    <message>
        <source>dead pin %1</source>
        <translation>toter Anschluss %1</translation>
    </message>
</context>
<context>
    <name>netmend::LineTreeView</name>
    <message>
        <source>Line tree</source>
        <translation>Leitungsbaum</translation>
    </message>
    <message>
        <source>Arrows go along the line; pins shown: %1</source>
        <translation>Pfeiltasten gehen die Leitung entlang; gezeigte Anschlüsse: %1</translation>
    </message>
    <message>
        <source>fork</source>
        <translation>Abzweig</translation>
    </message>
    <message>
        <source>, Enter shows them</source>
        <translation>, Enter zeigt sie</translation>
    </message>
    <message>
        <source>through %1</source>
        <translation>durch %1</translation>
    </message>
    <message>
        <source>through %1, %2</source>
        <translation>durch %1, %2</translation>
    </message>
    <message>
        <source>from %1 to %2: %3; open here: %4</source>
        <translation>von %1 nach %2: %3; hier offen: %4</translation>
    </message>
    <message>
        <source>copper</source>
        <translation>Kupfer</translation>
    </message>
    <message>
        <source>below half a per cent</source>
        <translation>unter einem halben Prozent</translation>
    </message>
</context>
<context>
    <name>netmend::MapLayers</name>
    <message>
        <source>shown</source>
        <translation>gezeigt</translation>
    </message>
    <message>
        <source>dimmed</source>
        <translation>blass</translation>
    </message>
    <message>
        <source>hidden</source>
        <translation>verborgen</translation>
    </message>
    <message>
        <source>Layers</source>
        <translation>Lagen</translation>
    </message>
    <message>
        <source>Space shows a layer whole, dimmed or not at all</source>
        <translation>Leertaste zeigt eine Lage ganz, blass oder gar nicht</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>netmend::MapSearch</name>
    <message>
        <source>part</source>
        <translation>Bauteil</translation>
    </message>
    <message>
        <source>pin</source>
        <translation>Anschluss</translation>
    </message>
    <message>
        <source>net</source>
        <translation>Netz</translation>
    </message>
    <message>
        <source>Part, pin, net or value</source>
        <translation>Bauteil, Anschluss, Netz oder Wert</translation>
    </message>
    <message>
        <source>Search the board</source>
        <translation>Platine durchsuchen</translation>
    </message>
</context>
<context>
    <name>netmend::OddStrip</name>
    <message>
        <source>comes and goes</source>
        <translation>kommt und geht</translation>
    </message>
    <message>
        <source>open</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>short</source>
        <translation>Schluss</translation>
    </message>
    <message>
        <source>low %1</source>
        <translation>tief %1</translation>
    </message>
    <message>
        <source>high %1</source>
        <translation>hoch %1</translation>
    </message>
    <message>
        <source>reads %1</source>
        <translation>zeigt %1</translation>
    </message>
    <message>
        <source>%1 mended, %2</source>
        <translation>%1 repariert, %2</translation>
    </message>
    <message>
        <source>No odd pins</source>
        <translation>Keine auffälligen Pins</translation>
    </message>
    <message>
        <source>Odd pins</source>
        <translation>Auffällig</translation>
    </message>
    <message numerus="yes">
        <source>%n more odd pin(s)</source>
        <translation>
            <numerusform>%n weiterer auffälliger Pin</numerusform>
            <numerusform>%n weitere auffällige Pins</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::PadPicture</name>
    <message>
        <source>no net</source>
        <translation>kein Netz</translation>
    </message>
    <message>
        <source>skipped</source>
        <translation>ausgel.</translation>
    </message>
    <message>
        <source>good</source>
        <translation>gut</translation>
    </message>
    <message>
        <source>Connector as it lies</source>
        <translation>Stecker, wie er liegt</translation>
    </message>
    <message>
        <source>no pin is due</source>
        <translation>kein Stift ist dran</translation>
    </message>
    <message>
        <source>pin %1 is due</source>
        <translation>Stift %1 ist dran</translation>
    </message>
    <message>
        <source>%1 of %2 pins read, %3 odd</source>
        <translation>%1 von %2 Stiften gemessen, %3 auffällig</translation>
    </message>
    <message>
        <source>pins in their order</source>
        <translation>Stifte der Reihe nach</translation>
    </message>
    <message>
        <source>mirrored</source>
        <translation>gespiegelt</translation>
    </message>
</context>
<context>
    <name>netmend::PedalPrompt</name>
    <message>
        <source>Footswitch</source>
        <translation>Fußschalter</translation>
    </message>
    <message>
        <source>Choose what, then press the pedal, key or mouse button that shall do it. Escape: leave it as it is. Delete: none.</source>
        <translation>Wählen, was geschehen soll, dann das Pedal, die Taste oder Maustaste dafür drücken. Esc: so lassen. Entf: keine.</translation>
    </message>
    <message>
        <source>Press the pedal now</source>
        <translation>Jetzt das Pedal drücken</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>netmend::PhotoInset</name>
    <message>
        <source>The photo as it was taken</source>
        <translation>Das Foto, wie es aufgenommen wurde</translation>
    </message>
</context>
<context>
    <name>netmend::PhotosView</name>
    <message>
        <source>Before</source>
        <translation>Vorher</translation>
    </message>
    <message>
        <source>After</source>
        <translation>Nachher</translation>
    </message>
    <message>
        <source>Taken before or after the repair</source>
        <translation>Vor oder nach der Reparatur aufgenommen</translation>
    </message>
    <message>
        <source>what the photo shows</source>
        <translation>was das Foto zeigt</translation>
    </message>
    <message>
        <source>What the photo shows</source>
        <translation>Was das Foto zeigt</translation>
    </message>
    <message>
        <source>Add photos</source>
        <translation>Fotos dazu</translation>
    </message>
    <message>
        <source>Photos; Delete takes one out</source>
        <translation>Fotos; Entf nimmt eines heraus</translation>
    </message>
    <message>
        <source>PNG or JPEG; they can be dropped here too. Delete takes the marked photo out; Undo brings it back.</source>
        <translation>PNG oder JPEG; auch hierher zu ziehen. Entf nimmt das markierte Foto heraus; Rückgängig holt es wieder.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <comment>before or after: what</comment>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Photos for the job</source>
        <translation>Fotos für den Auftrag</translation>
    </message>
    <message>
        <source>Pictures (*.png *.jpg *.jpeg *.PNG *.JPG *.JPEG)</source>
        <translation>Bilder (*.png *.jpg *.jpeg *.PNG *.JPG *.JPEG)</translation>
    </message>
    <message>
        <source>A photo needs a job: book one in first</source>
        <translation>Ein Foto braucht einen Auftrag: erst einen annehmen</translation>
    </message>
    <message>
        <source>Photos</source>
        <translation>Fotos</translation>
    </message>
</context>
<context>
    <name>netmend::ProofTable</name>
    <message>
        <source>Points to measure again</source>
        <translation>Nachzumessende Punkte</translation>
    </message>
    <message>
        <source>Point</source>
        <translation>Punkt</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Vorher</translation>
    </message>
    <message>
        <source>Must be</source>
        <translation>Soll</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Jetzt</translation>
    </message>
    <message>
        <source>skipped</source>
        <translation>übersprungen</translation>
    </message>
    <message>
        <source>the wire, end to end</source>
        <translation>der Draht, Ende zu Ende</translation>
    </message>
    <message>
        <source>%1, neighbour</source>
        <translation>%1, Nachbar</translation>
    </message>
    <message>
        <source>due</source>
        <translation>dran</translation>
    </message>
</context>
<context>
    <name>netmend::ProposalCard</name>
    <message>
        <source>top side</source>
        <translation>Oberseite</translation>
    </message>
    <message>
        <source>bottom side</source>
        <translation>Unterseite</translation>
    </message>
    <message>
        <source>Proposal %1: %2</source>
        <translation>Vorschlag %1: %2</translation>
    </message>
    <message>
        <source>%1  %2: %3</source>
        <translation>%1  %2: %3</translation>
    </message>
    <message>
        <source>Note: %1</source>
        <translation>Hinweis: %1</translation>
    </message>
    <message>
        <source>Warning: %1</source>
        <translation>Warnung: %1</translation>
    </message>
    <message>
        <source>%1 points</source>
        <translation>%1 Punkte</translation>
    </message>
    <message>
        <source>Current: %1</source>
        <translation>Strom: %1</translation>
    </message>
    <message>
        <source>%1 mm on the %2; %3</source>
        <translation>%1 mm auf der %2; %3</translation>
    </message>
    <message>
        <source>chosen</source>
        <translation>gewählt</translation>
    </message>
    <message>
        <source>scrape the mask at %1</source>
        <translation>Lack freilegen: %1</translation>
    </message>
    <message>
        <source>mask over %1 not known</source>
        <translation>Lack über %1 nicht bekannt</translation>
    </message>
    <message>
        <source>scrape the track at %1</source>
        <translation>Leiterbahn freilegen: %1</translation>
    </message>
    <message>
        <source>small part: fix the wire at %1</source>
        <translation>kleines Teil: Draht festlegen, %1</translation>
    </message>
    <message>
        <source>look first: may be a coupling capacitor, %1</source>
        <translation>erst ansehen: vielleicht Koppelkondensator, %1</translation>
    </message>
    <message>
        <source>live side of %1</source>
        <translation>spannungsführende Seite von %1</translation>
    </message>
    <message>
        <source>only this end of %1</source>
        <translation>nur dieses Ende von %1</translation>
    </message>
    <message>
        <source>on the leg itself: %1</source>
        <translation>am Beinchen selbst: %1</translation>
    </message>
    <message>
        <source>close beside a keep-out at %1</source>
        <translation>dicht neben einer Sperrfläche: %1</translation>
    </message>
    <message>
        <source>look first: height of %1 is guessed</source>
        <translation>erst ansehen: Höhe von %1 ist geschätzt</translation>
    </message>
    <message>
        <source>outline of the board is guessed</source>
        <translation>Umriss der Platine ist geschätzt</translation>
    </message>
    <message>
        <source>through %1: see why</source>
        <translation>durch %1: siehe Warum</translation>
    </message>
    <message>
        <source>over %1</source>
        <translation>über %1</translation>
    </message>
    <message>
        <source>over bare copper of other nets</source>
        <translation>über blankem Kupfer anderer Netze</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 nach %2</translation>
    </message>
    <message>
        <source>the wire has a warning: see why</source>
        <translation>Warnung zum Draht: siehe Warum</translation>
    </message>
    <message>
        <source>of wire</source>
        <translation>Draht</translation>
    </message>
    <message>
        <source>mends it</source>
        <translation>behebt es</translation>
    </message>
    <message>
        <source>to %1</source>
        <translation>zu %1</translation>
    </message>
    <message>
        <source>nothing near</source>
        <translation>nichts in der Nähe</translation>
    </message>
    <message>
        <source>of work</source>
        <translation>Arbeit</translation>
    </message>
</context>
<context>
    <name>netmend::ProposalsView</name>
    <message>
        <source>The ways to bridge it are being looked for</source>
        <translation>Wege zum Überbrücken werden gesucht</translation>
    </message>
    <message>
        <source>No jumper: %1</source>
        <translation>Keine Drahtbrücke: %1</translation>
    </message>
    <message>
        <source>No jumper: no line is suspected yet. Walk a connector and find the place first, or choose another repair below.</source>
        <translation>Keine Drahtbrücke: noch keine Leitung verdächtig. Erst einen Stecker messen und die Stelle finden, oder unten eine andere Reparatur wählen.</translation>
    </message>
    <message>
        <source>How to repair it</source>
        <translation>Wie reparieren</translation>
    </message>
</context>
<context>
    <name>netmend::ProvePage</name>
    <message>
        <source>452  Enter</source>
        <translation>452  Enter</translation>
    </message>
    <message>
        <source>Reading now</source>
        <translation>Wert jetzt</translation>
    </message>
    <message>
        <source>OL</source>
        <translation>OL</translation>
    </message>
    <message>
        <source>Skip</source>
        <translation>Auslassen</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>No point</source>
        <translation>Kein Punkt</translation>
    </message>
    <message>
        <source>F: the functions. B: measure again.</source>
        <translation>F: die Funktionen. B: nochmals messen.</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 nach %2</translation>
    </message>
    <message>
        <source>%1: one lead here, the other on %2</source>
        <translation>%1: eine Prüfspitze hier, die andere auf %2</translation>
    </message>
    <message>
        <source>No point is due</source>
        <translation>Kein Punkt ist dran</translation>
    </message>
    <message>
        <source>proof of %1</source>
        <translation>Nachweis von %1</translation>
    </message>
    <message>
        <source>skipped point</source>
        <translation>übersprungener Punkt</translation>
    </message>
    <message>
        <source>Comes and goes</source>
        <translation>Wackelkontakt</translation>
    </message>
    <message>
        <source>Read again: %1. I: it comes and goes</source>
        <translation>Neu gemessen: %1. I: Wackelkontakt</translation>
    </message>
    <message>
        <source>Next point</source>
        <translation>Nächster Punkt</translation>
    </message>
    <message>
        <source>PROVE %1</source>
        <translation>PRÜFEN %1</translation>
    </message>
    <message numerus="yes">
        <source>%1 and %n more</source>
        <translation>
            <numerusform>%1 und %n weiterer</numerusform>
            <numerusform>%1 und %n weitere</numerusform>
        </translation>
    </message>
    <message>
        <source>the wire</source>
        <translation>der Draht</translation>
    </message>
    <message>
        <source>%1 reads %2: %3</source>
        <translation>%1 misst %2: %3</translation>
    </message>
    <message>
        <source>%1 (left out)</source>
        <translation>%1 (ausgelassen)</translation>
    </message>
    <message numerus="yes">
        <source>%n left: %1</source>
        <translation>
            <numerusform>%n übrig: %1</numerusform>
            <numerusform>%n übrig: %1</numerusform>
        </translation>
    </message>
    <message>
        <source>Nothing to prove yet</source>
        <translation>Noch nichts zu prüfen</translation>
    </message>
    <message>
        <source>Goes back unrepaired</source>
        <translation>Geht unrepariert zurück</translation>
    </message>
    <message>
        <source>choose a repair at the station before</source>
        <translation>an der Station davor eine Reparatur wählen</translation>
    </message>
    <message>
        <source>nothing to prove</source>
        <translation>nichts zu prüfen</translation>
    </message>
    <message>
        <source>PROVED</source>
        <translation>NACHGEWIESEN</translation>
    </message>
    <message>
        <source>every point reads as it must, and the functions work</source>
        <translation>jeder Punkt misst, wie er muss, und die Funktionen gehen</translation>
    </message>
    <message numerus="yes">
        <source>%n work step(s) not ticked</source>
        <translation>
            <numerusform>%n Arbeitsschritt nicht abgehakt</numerusform>
            <numerusform>%n Arbeitsschritte nicht abgehakt</numerusform>
        </translation>
    </message>
    <message>
        <source>NOT PROVED</source>
        <translation>NICHT NACHGEWIESEN</translation>
    </message>
    <message>
        <source>no function tried</source>
        <translation>keine Funktion erprobt</translation>
    </message>
    <message numerus="yes">
        <source>%1 of %n function(s) left</source>
        <translation>
            <numerusform>%1 von %n Funktion übrig</numerusform>
            <numerusform>%1 von %n Funktionen übrig</numerusform>
        </translation>
    </message>
    <message>
        <source>All measured</source>
        <translation>Alles gemessen</translation>
    </message>
    <message>
        <source>Reading</source>
        <translation>Messwert</translation>
    </message>
    <message>
        <source>Once more</source>
        <translation>Noch einmal</translation>
    </message>
    <message>
        <source>Black lead here, red on %1</source>
        <translation>Schwarze Spitze hier, rote an %1</translation>
    </message>
    <message>
        <source>Red lead here, black on %1</source>
        <translation>Rote Spitze hier, schwarze an %1</translation>
    </message>
    <message>
        <source>One lead on each end</source>
        <translation>Je eine Spitze an jedem Ende</translation>
    </message>
    <message>
        <source>Reading, %1</source>
        <translation>Messwert, %1</translation>
    </message>
    <message>
        <source>Nothing to compare with</source>
        <translation>Kein Vergleich</translation>
    </message>
    <message>
        <source>Must be %1</source>
        <translation>Soll %1</translation>
    </message>
</context>
<context>
    <name>netmend::SheetPreview</name>
    <message>
        <source>Job sheet as it will print</source>
        <translation>Auftragsblatt, wie es gedruckt wird</translation>
    </message>
    <message numerus="yes">
        <source>%n page(s)</source>
        <translation>
            <numerusform>%n Seite</numerusform>
            <numerusform>%n Seiten</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::Station</name>
    <message>
        <source>%1 pin %2</source>
        <translation>%1 Stift %2</translation>
    </message>
</context>
<context>
    <name>netmend::StationPage</name>
    <message>
        <source>The meter is in another mode than this point wants: nothing taken</source>
        <translation>Messgerät steht auf anderer Messart als dieser Punkt braucht: nichts übernommen</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Warum</translation>
    </message>
    <message>
        <source>Why: reasons and figures</source>
        <translation>Warum: Gründe und Zahlen</translation>
    </message>
    <message>
        <source>It comes and goes: %1. I: a slip</source>
        <translation>Wackelkontakt: %1. I: abgerutscht</translation>
    </message>
    <message>
        <source>A slip: %1. I: it comes and goes</source>
        <translation>Abgerutscht: %1. I: Wackelkontakt</translation>
    </message>
    <message>
        <source>The last reading was the first here, or agrees with the one before</source>
        <translation>Der letzte Messwert war hier der erste oder gleicht dem davor</translation>
    </message>
</context>
<context>
    <name>netmend::StepsView</name>
    <message>
        <source>Another repair</source>
        <translation>Andere Reparatur</translation>
    </message>
    <message>
        <source>Steps</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>Reading or note of this step</source>
        <translation>Wert oder Notiz dieses Schritts</translation>
    </message>
    <message>
        <source>reading  Enter</source>
        <translation>Wert  Enter</translation>
    </message>
    <message>
        <source>Tick</source>
        <translation>Haken</translation>
    </message>
    <message>
        <source>OL</source>
        <translation>OL</translation>
    </message>
    <message>
        <source>Step before</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>done: %1</source>
        <translation>erledigt: %1</translation>
    </message>
    <message>
        <source>open: %1</source>
        <translation>offen: %1</translation>
    </message>
    <message>
        <source>No repair chosen yet</source>
        <translation>Noch keine Reparatur gewählt</translation>
    </message>
    <message>
        <source>All steps are done</source>
        <translation>Alle Schritte sind getan</translation>
    </message>
    <message>
        <source>Now prove that it holds: the next station</source>
        <translation>Jetzt nachweisen, dass es hält: nächste Station</translation>
    </message>
    <message>
        <source>%1: step %2 of %3%4</source>
        <translation>%1: Schritt %2 von %3%4</translation>
    </message>
    <message>
        <source>, done</source>
        <translation>, erledigt</translation>
    </message>
    <message>
        <source>Must be: %1</source>
        <translation>Soll: %1</translation>
    </message>
    <message>
        <source>Noted: %1</source>
        <translation>Notiert: %1</translation>
    </message>
    <message>
        <source>note  Enter</source>
        <translation>Notiz  Enter</translation>
    </message>
    <message>
        <source>tick of a step</source>
        <translation>Haken eines Schritts</translation>
    </message>
    <message>
        <source>tick taken off</source>
        <translation>Haken entfernt</translation>
    </message>
    <message>
        <source>note of a step</source>
        <translation>Notiz eines Schritts</translation>
    </message>
    <message>
        <source>Kept as a note: %1</source>
        <translation>Als Notiz behalten: %1</translation>
    </message>
    <message>
        <source>This step takes no reading: Space ticks it</source>
        <translation>Dieser Schritt nimmt keinen Wert: Leertaste hakt ab</translation>
    </message>
    <message>
        <source>reading of a check</source>
        <translation>Wert einer Prüfung</translation>
    </message>
    <message>
        <source>Overrule</source>
        <translation>Übergehen</translation>
    </message>
    <message>
        <source>why it is overruled   Enter</source>
        <translation>warum übergangen   Enter</translation>
    </message>
    <message>
        <source>Reason for overruling this check</source>
        <translation>Grund, diese Prüfung zu übergehen</translation>
    </message>
    <message>
        <source>%1. Stop: repeat it, or overrule it with a reason (Shift+O)</source>
        <translation>%1. Halt: wiederholen, oder mit Grund übergehen (Umschalt+O)</translation>
    </message>
    <message>
        <source>Check %1 read what it must not: repeat it, or overrule it with a reason</source>
        <translation>Prüfung %1 zeigte, was sie nicht darf: wiederholen, oder mit Grund übergehen</translation>
    </message>
    <message>
        <source>It read what it must not: repeat it, or overrule it with a reason (Shift+O)</source>
        <translation>Sie zeigte, was sie nicht darf: wiederholen, oder mit Grund übergehen (Umschalt+O)</translation>
    </message>
    <message>
        <source>No check has read wrong: nothing to overrule</source>
        <translation>Keine Prüfung zeigte Falsches: nichts zu übergehen</translation>
    </message>
    <message>
        <source>Overruled only with a reason: it stands on the sheet</source>
        <translation>Nur mit Grund zu übergehen: er steht auf dem Blatt</translation>
    </message>
    <message>
        <source>overruling of a check</source>
        <translation>Übergehen einer Prüfung</translation>
    </message>
    <message>
        <source>under %1</source>
        <translation>unter %1</translation>
    </message>
    <message>
        <source>OL or %1</source>
        <translation>OL oder %1</translation>
    </message>
    <message>
        <source>%1: black lead on %2, red lead on %3</source>
        <translation>%1: schwarz an %2, rot an %3</translation>
    </message>
    <message>
        <source>%1: from %2 to %3</source>
        <translation>%1: von %2 nach %3</translation>
    </message>
    <message>
        <source>battery contacts</source>
        <translation>Batteriekontakte</translation>
    </message>
    <message>
        <source>over %1</source>
        <translation>über %1</translation>
    </message>
</context>
<context>
    <name>netmend::StillCamera</name>
    <message>
        <source>Picture taken: %1</source>
        <translation>Bild aufgenommen: %1</translation>
    </message>
    <message>
        <source>A picture needs a job: book one in first (Ctrl+N)</source>
        <translation>Ein Bild braucht einen Auftrag: erst einen annehmen (Strg+N)</translation>
    </message>
    <message>
        <source>After: microscope</source>
        <translation>Nachher: Mikroskop</translation>
    </message>
    <message>
        <source>Before: microscope</source>
        <translation>Vorher: Mikroskop</translation>
    </message>
    <message>
        <source>Another job is open: the picture was not kept</source>
        <translation>Ein anderer Auftrag ist offen: das Bild wurde nicht behalten</translation>
    </message>
</context>
<context>
    <name>netmend::SuspectList</name>
    <message>
        <source>Suspects, likeliest first</source>
        <translation>Verdacht, wahrscheinlichster zuerst</translation>
    </message>
    <message numerus="yes">
        <source>%n other place(s)</source>
        <translation>
            <numerusform>%n andere Stelle</numerusform>
            <numerusform>%n andere Stellen</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::WalkEar</name>
    <message>
        <source>over limit</source>
        <translation>über dem Messbereich</translation>
    </message>
    <message>
        <source>%1 millivolts</source>
        <translation>%1 Millivolt</translation>
    </message>
    <message>
        <source>%1 volts</source>
        <translation>%1 Volt</translation>
    </message>
    <message>
        <source>%1 milliohms</source>
        <translation>%1 Milliohm</translation>
    </message>
    <message>
        <source>%1 ohms</source>
        <translation>%1 Ohm</translation>
    </message>
    <message>
        <source>%1 kiloohms</source>
        <translation>%1 Kiloohm</translation>
    </message>
    <message>
        <source>%1 megaohms</source>
        <translation>%1 Megaohm</translation>
    </message>
    <message>
        <source>%1 degrees</source>
        <translation>%1 Grad</translation>
    </message>
    <message>
        <source>pin %1</source>
        <translation>Pin %1</translation>
    </message>
    <message>
        <source>%1, %2, %3.</source>
        <translation>%1, %2, %3.</translation>
    </message>
    <message>
        <source>Next: %1.</source>
        <translation>Weiter: %1.</translation>
    </message>
    <message>
        <source>Good board, %1.</source>
        <translation>Gute Platine, %1.</translation>
    </message>
    <message>
        <source>Job&apos;s board, %1.</source>
        <translation>Platine des Auftrags, %1.</translation>
    </message>
    <message>
        <source>Good board walked. Take keeps it.</source>
        <translation>Gute Platine gemessen. Übernehmen behält sie.</translation>
    </message>
    <message numerus="yes">
        <source>Walked, %n odd.</source>
        <translation>
            <numerusform>Gemessen, %n auffällig.</numerusform>
            <numerusform>Gemessen, %n auffällig.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::WalkPage</name>
    <message>
        <source>What to walk</source>
        <translation>Was gemessen wird</translation>
    </message>
    <message>
        <source>Meter mode</source>
        <translation>Messart</translation>
    </message>
    <message>
        <source>Left &amp;plugged in</source>
        <translation>Ge&amp;steckt geblieben</translation>
    </message>
    <message>
        <source>nothing; or: battery, display</source>
        <translation>nichts; oder: Akku, Anzeige</translation>
    </message>
    <message>
        <source>Board at °C</source>
        <translation>Platine in °C</translation>
    </message>
    <message>
        <source>Not a temperature: %1</source>
        <translation>Keine Temperatur: %1</translation>
    </message>
    <message>
        <source>452  Enter</source>
        <translation>452  Enter</translation>
    </message>
    <message>
        <source>Reading</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>OL</source>
        <translation>OL</translation>
    </message>
    <message>
        <source>Skip</source>
        <translation>Auslassen</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Turn picture</source>
        <translation>Bild drehen</translation>
    </message>
    <message>
        <source>Mirror</source>
        <translation>Spiegeln</translation>
    </message>
    <message numerus="yes">
        <source>%1, %n pin(s)</source>
        <translation>
            <numerusform>%1, %n Anschluss</numerusform>
            <numerusform>%1, %n Anschlüsse</numerusform>
        </translation>
    </message>
    <message>
        <source>GOOD BOARD</source>
        <translation>GUTE PLATINE</translation>
    </message>
    <message>
        <source>JOB&apos;S BOARD</source>
        <translation>AUFTRAGSPLATINE</translation>
    </message>
    <message>
        <source>No board yet</source>
        <translation>Noch keine Platine</translation>
    </message>
    <message>
        <source>Open one, or type its connector, at the station before</source>
        <translation>An der Station davor öffnen oder Stecker eingeben</translation>
    </message>
    <message>
        <source>Good board walked</source>
        <translation>Gute Platine gemessen</translation>
    </message>
    <message>
        <source>Walked, nothing odd</source>
        <translation>Gemessen, nichts auffällig</translation>
    </message>
    <message numerus="yes">
        <source>Walked, %n odd</source>
        <translation>
            <numerusform>Gemessen, %n auffällig</numerusform>
            <numerusform>Gemessen, %n auffällig</numerusform>
        </translation>
    </message>
    <message>
        <source>K keeps it for all jobs on this board</source>
        <translation>K behält sie für alle Aufträge mit dieser Platine</translation>
    </message>
    <message>
        <source>%1: one lead on the pin, the other on %2</source>
        <translation>%1: eine Prüfspitze auf den Stift, die andere auf %2</translation>
    </message>
    <message>
        <source>not stated</source>
        <translation>nicht angegeben</translation>
    </message>
    <message>
        <source>M&amp;eter</source>
        <translation>M&amp;essgerät</translation>
    </message>
    <message>
        <source>Measured &amp;by</source>
        <translation>G&amp;emessen vonGemessen von</translation>
    </message>
    <message>
        <source>Kept for all jobs on this board; Undo takes it back</source>
        <translation>Behalten für alle Aufträge mit dieser Platine; Rückgängig nimmt es zurück</translation>
    </message>
    <message>
        <source>Condition, meter</source>
        <translation>Zustand, Messgerät</translation>
    </message>
    <message>
        <source>Comes and goes</source>
        <translation>Wackelkontakt</translation>
    </message>
    <message>
        <source>Walk the job&apos;s board</source>
        <translation>Auftragsplatine messen</translation>
    </message>
    <message>
        <source>Walk a good board</source>
        <translation>Gute Platine messen</translation>
    </message>
    <message>
        <source>Next point</source>
        <translation>Nächster Punkt</translation>
    </message>
    <message>
        <source>initials</source>
        <translation>Kürzel</translation>
    </message>
    <message>
        <source>Taken last</source>
        <translation>Zuletzt</translation>
    </message>
    <message>
        <source>Move by one pin</source>
        <translation>Um einen Pin rücken</translation>
    </message>
    <message>
        <source>Keep as good</source>
        <translation>Als gut behalten</translation>
    </message>
    <message>
        <source>Map</source>
        <translation>Karte</translation>
    </message>
    <message>
        <source>Its readings set the range for every later job</source>
        <translation>Ihre Werte gelten für jeden späteren Auftrag</translation>
    </message>
    <message numerus="yes">
        <source>%n kept before</source>
        <translation>
            <numerusform>%n schon behalten</numerusform>
            <numerusform>%n schon behalten</numerusform>
        </translation>
    </message>
    <message>
        <source>Nothing plugged in</source>
        <translation>Nichts gesteckt</translation>
    </message>
    <message>
        <source>%1 °C</source>
        <translation>%1 °C</translation>
    </message>
    <message>
        <source>Job&apos;s board</source>
        <translation>Auftragsplatine</translation>
    </message>
    <message>
        <source>Good board</source>
        <translation>Gute Platine</translation>
    </message>
    <message>
        <source>no net</source>
        <translation>kein Netz</translation>
    </message>
    <message>
        <source>Black lead on the pin, red on %1</source>
        <translation>Schwarz auf den Stift, Rot auf %1</translation>
    </message>
    <message>
        <source>Black on it, red on %1</source>
        <translation>Schwarz darauf, Rot auf %1</translation>
    </message>
    <message>
        <source>Red lead on the pin, black on %1</source>
        <translation>Rot auf den Stift, Schwarz auf %1</translation>
    </message>
    <message>
        <source>Red on it, black on %1</source>
        <translation>Rot darauf, Schwarz auf %1</translation>
    </message>
    <message>
        <source>%1, to %2</source>
        <translation>%1, gegen %2</translation>
    </message>
    <message>
        <source>Meter</source>
        <translation>Messgerät</translation>
    </message>
    <message>
        <source>%1, %2, linked</source>
        <translation>%1, %2, verbunden</translation>
    </message>
    <message>
        <source>%1, %2, typed</source>
        <translation>%1, %2, getippt</translation>
    </message>
    <message>
        <source>Nothing to compare with yet</source>
        <translation>Noch kein Vergleich</translation>
    </message>
    <message>
        <source>Other good boards</source>
        <translation>Andere gute Platinen</translation>
    </message>
    <message>
        <source>Good boards</source>
        <translation>Gute Platinen</translation>
    </message>
    <message>
        <source>Unlike the other good boards</source>
        <translation>Anders als die anderen guten</translation>
    </message>
    <message>
        <source>Odd so far</source>
        <translation>Auffällig bisher</translation>
    </message>
    <message>
        <source>Read %1 again</source>
        <translation>%1 noch einmal</translation>
    </message>
    <message>
        <source>pins in the order of their names</source>
        <translation>Stifte in der Folge ihrer Namen</translation>
    </message>
    <message>
        <source>seen from the bottom</source>
        <translation>von unten gesehen</translation>
    </message>
    <message>
        <source>seen from the top</source>
        <translation>von oben gesehen</translation>
    </message>
    <message>
        <source>%1 of %2 read</source>
        <translation>%1 von %2 gemessen</translation>
    </message>
    <message>
        <source>%1 of %2 read, %3 without net</source>
        <translation>%1 von %2 gemessen, %3 ohne Netz</translation>
    </message>
</context>
</TS>
