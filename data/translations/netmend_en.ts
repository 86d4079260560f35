<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en">
<context>
    <name>netmend</name>
    <message numerus="yes">
        <source>%n work step(s) not ticked</source>
        <translation>
            <numerusform>%n work step not ticked</numerusform>
            <numerusform>%n work steps not ticked</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n joint(s)</source>
        <translation>
            <numerusform>joint</numerusform>
            <numerusform>%n joints</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n via(s)</source>
        <translation>
            <numerusform>via</numerusform>
            <numerusform>%n vias</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::BenchDrawing</name>
    <message numerus="yes">
        <source>%n pin(s) named</source>
        <translation>
            <numerusform>%n pin named</numerusform>
            <numerusform>%n pins named</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n line(s) name no pin of this board, first: %1</source>
        <translation>
            <numerusform>%n line names no pin of this board: %1</numerusform>
            <numerusform>%n lines name no pin of this board, first: %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::BoardPage</name>
    <message numerus="yes">
        <source>%n pin(s)</source>
        <translation>
            <numerusform>%n pin</numerusform>
            <numerusform>%n pins</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n part(s)</source>
        <translation>
            <numerusform>%n part</numerusform>
            <numerusform>%n parts</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n net(s)</source>
        <translation>
            <numerusform>%n net</numerusform>
            <numerusform>%n nets</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n good board(s) walked</source>
        <translation>
            <numerusform>%n good board walked</numerusform>
            <numerusform>%n good boards walked</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n good walk(s)</source>
        <translation>
            <numerusform>%n good walk</numerusform>
            <numerusform>%n good walks</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::BookInPage</name>
    <message numerus="yes">
        <source>%n reading(s)</source>
        <translation>
            <numerusform>%n reading</numerusform>
            <numerusform>%n readings</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::DrawView</name>
    <message numerus="yes">
        <source>%n pin(s)</source>
        <translation>
            <numerusform>%n pin</numerusform>
            <numerusform>%n pins</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::FindPage</name>
    <message numerus="yes">
        <source>%n nets or pins are called so: name a pin of the line that is meant</source>
        <translation>
            <numerusform>%n net or pin is called so: name a pin of the line that is meant</numerusform>
            <numerusform>%n nets or pins are called so: name a pin of the line that is meant</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::HandOverPage</name>
    <message numerus="yes">
        <source>%n point(s)</source>
        <translation>
            <numerusform>%n point</numerusform>
            <numerusform>%n points</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n function(s)</source>
        <translation>
            <numerusform>%n function</numerusform>
            <numerusform>%n functions</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n thing(s) open</source>
        <translation>
            <numerusform>%n thing open</numerusform>
            <numerusform>%n things open</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Workshop copy, %n page(s)</source>
        <translation>
            <numerusform>Workshop copy, %n page</numerusform>
            <numerusform>Workshop copy, %n pages</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::LineTree</name>
    <message numerus="yes">
        <source>%n more pin(s)</source>
        <translation>
            <numerusform>%n more pin</numerusform>
            <numerusform>%n more pins</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::OddStrip</name>
    <message numerus="yes">
        <source>%n more odd pin(s)</source>
        <translation>
            <numerusform>%n more odd pin</numerusform>
            <numerusform>%n more odd pins</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::ProvePage</name>
    <message numerus="yes">
        <source>%1 and %n more</source>
        <translation>
            <numerusform>%1 and %n more</numerusform>
            <numerusform>%1 and %n more</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n left: %1</source>
        <translation>
            <numerusform>%n left: %1</numerusform>
            <numerusform>%n left: %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n work step(s) not ticked</source>
        <translation>
            <numerusform>%n work step not ticked</numerusform>
            <numerusform>%n work steps not ticked</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 of %n function(s) left</source>
        <translation>
            <numerusform>%1 of %n function left</numerusform>
            <numerusform>%1 of %n functions left</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::SheetPreview</name>
    <message numerus="yes">
        <source>%n page(s)</source>
        <translation>
            <numerusform>%n page</numerusform>
            <numerusform>%n pages</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::SuspectList</name>
    <message numerus="yes">
        <source>%n other place(s)</source>
        <translation>
            <numerusform>%n other place</numerusform>
            <numerusform>%n other places</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::WalkEar</name>
    <message numerus="yes">
        <source>Walked, %n odd.</source>
        <translation>
            <numerusform>Walked, %n odd.</numerusform>
            <numerusform>Walked, %n odd.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>netmend::WalkPage</name>
    <message numerus="yes">
        <source>%1, %n pin(s)</source>
        <translation>
            <numerusform>%1, %n pin</numerusform>
            <numerusform>%1, %n pins</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Walked, %n odd</source>
        <translation>
            <numerusform>Walked, %n odd</numerusform>
            <numerusform>Walked, %n odd</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n kept before</source>
        <translation>
            <numerusform>%n kept before</numerusform>
            <numerusform>%n kept before</numerusform>
        </translation>
    </message>
</context>
</TS>
