/**
 * Sentences of our own in the languages we can name, each about things said on a pitch, from which letter groups and
 * small words are counted. Written for this list; what they say does not matter, how they say it does.
 */
export const TONGUES: Readonly<Record<string, string>> = {
  cy: `Sut mae troi'r gwres ymlaen? Ble mae'r botel nwy? Does dim dŵr yn y tap. Mae'r oergell yn gynnes ac nid yw'n oeri.
Pryd mae'n rhaid i ni ddod â'r garafán yn ôl? Allwch chi ein helpu ni os gwelwch yn dda? Mae'r golau wedi diffodd ac mae hi'n dywyll.
Beth yw'r cyfrinair ar gyfer y we? Ydy'r siop ar agor heddiw? Dw i ddim yn gallu agor y drws. Rydyn ni newydd gyrraedd y maes.
Ble gallwn ni wagio'r toiled? Faint o'r gloch mae'r swyddfa yn cau? Mae'r plant eisiau cawod ond mae'r dŵr yn oer.
Dydy'r trydan ddim yn gweithio ers y bore. A oes lle i'r ci? Sut ydw i'n cysylltu'r cebl? Mae angen mwy o nwy arnon ni.
Mae sŵn rhyfedd yn dod o'r pwmp. Diolch yn fawr iawn am eich help. Ga i siarad â rhywun? Wnes i dorri'r ffenest yn ddamweiniol.
Mae'r batri yn fflat. Pa mor hir fydd y nwy yn para? Oes rhywle i fwyta gerllaw? Dwi'n methu cynnau'r popty. Be dwi fod i neud rŵan?
Mae'r to yn gollwng pan mae hi'n bwrw glaw. Fedrwch chi ddweud wrtha i sut i'w ddefnyddio? Dan ni isio aros am noson arall.`,
  de: `Wie schalte ich die Heizung ein? Wo ist die Gasflasche? Aus dem Hahn kommt kein Wasser. Der Kühlschrank ist warm und kühlt nicht.
Wann müssen wir den Wohnwagen zurückbringen? Können Sie uns bitte helfen? Das Licht ist ausgegangen und es ist dunkel.
Wie lautet das Passwort für das Internet? Hat der Laden heute geöffnet? Ich kann die Tür nicht öffnen. Wir sind gerade auf dem Platz angekommen.
Wo können wir die Toilette leeren? Um wie viel Uhr schließt das Büro? Die Kinder wollen duschen, aber das Wasser bleibt kalt.
Der Strom geht seit heute Morgen nicht mehr. Dürfen wir den Hund mitnehmen? Welches Kabel gehört in die Steckdose? Wir brauchen mehr Gas.
Die Pumpe macht ein seltsames Geräusch. Vielen Dank für Ihre Hilfe. Kann ich mit jemandem sprechen? Ich habe aus Versehen das Fenster kaputt gemacht.
Die Batterie ist leer. Wie lange reicht das Gas noch? Gibt es hier in der Nähe etwas zu essen? Der Herd lässt sich nicht anzünden. Was soll ich jetzt tun?
Das Dach ist undicht, wenn es regnet. Könnten Sie mir sagen, wie man das benutzt? Wir möchten noch eine Nacht bleiben. Der Schlüssel steckt fest.`,
  fr: `Comment allumer le chauffage ? Où est la bouteille de gaz ? Il n'y a pas d'eau au robinet. Le frigo est tiède et ne refroidit pas.
Quand devons-nous rendre la caravane ? Pouvez-vous nous aider s'il vous plaît ? La lumière s'est éteinte et il fait noir.
Quel est le mot de passe pour internet ? Le magasin est-il ouvert aujourd'hui ? Je n'arrive pas à ouvrir la porte. Nous venons d'arriver sur le terrain.
Où peut-on vider les toilettes ? À quelle heure ferme le bureau ? Les enfants veulent une douche mais l'eau reste froide.
L'électricité ne marche plus depuis ce matin. Peut-on venir avec le chien ? Quel câble faut-il brancher sur la prise ? Il nous faut plus de gaz.
La pompe fait un drôle de bruit. Merci beaucoup pour votre aide. Est-ce que je peux parler à quelqu'un ? J'ai cassé la fenêtre sans le vouloir.
La batterie est à plat. Combien de temps le gaz va-t-il durer ? Y a-t-il un endroit pour manger près d'ici ? La cuisinière ne s'allume pas. Que dois-je faire maintenant ?
Le toit fuit quand il pleut. Pourriez-vous me dire comment ça marche ? Nous voudrions rester une nuit de plus. La clé est coincée dans la serrure.`,
  nl: `Hoe zet ik de verwarming aan? Waar staat de gasfles? Er komt geen water uit de kraan. De koelkast is warm en koelt niet.
Wanneer moeten wij de caravan terugbrengen? Kunt u ons alstublieft helpen? Het licht is uitgegaan en het is donker.
Wat is het wachtwoord voor het internet? Is de winkel vandaag open? Ik krijg de deur niet open. Wij zijn net op de plek aangekomen.
Waar kunnen we het toilet legen? Hoe laat sluit het kantoor? De kinderen willen douchen maar het water blijft koud.
De stroom doet het niet meer sinds vanochtend. Mag de hond mee? Welke kabel moet in het stopcontact? We hebben meer gas nodig.
De pomp maakt een vreemd geluid. Hartelijk bedankt voor uw hulp. Kan ik iemand spreken? Ik heb per ongeluk het raam kapot gemaakt.
De accu is leeg. Hoe lang gaat het gas nog mee? Is er hier in de buurt iets te eten? Het fornuis gaat niet aan. Wat moet ik nu doen?
Het dak lekt als het regent. Kunt u mij zeggen hoe je dit gebruikt? Wij zouden graag nog een nacht blijven. De sleutel zit vast in het slot.`,
  es: `¿Cómo enciendo la calefacción? ¿Dónde está la bombona de gas? No sale agua del grifo. La nevera está caliente y no enfría.
¿Cuándo tenemos que devolver la caravana? ¿Nos pueden ayudar, por favor? Se ha apagado la luz y está oscuro.
¿Cuál es la contraseña de internet? ¿Está abierta la tienda hoy? No puedo abrir la puerta. Acabamos de llegar a la parcela.
¿Dónde podemos vaciar el baño? ¿A qué hora cierra la oficina? Los niños quieren ducharse pero el agua sigue fría.
La electricidad no funciona desde esta mañana. ¿Podemos llevar al perro? ¿Qué cable va en el enchufe? Necesitamos más gas.
La bomba hace un ruido raro. Muchas gracias por su ayuda. ¿Puedo hablar con alguien? He roto la ventana sin querer.
La batería está descargada. ¿Cuánto tiempo durará el gas? ¿Hay algún sitio para comer cerca? La cocina no se enciende. ¿Qué hago ahora?
El techo gotea cuando llueve. ¿Me podría decir cómo se usa esto? Nos gustaría quedarnos una noche más. La llave se ha quedado atascada.`,
  it: `Come si accende il riscaldamento? Dov'è la bombola del gas? Non esce acqua dal rubinetto. Il frigorifero è caldo e non raffredda.
Quando dobbiamo riportare la roulotte? Potete aiutarci per favore? La luce si è spenta ed è buio.
Qual è la password per internet? Il negozio è aperto oggi? Non riesco ad aprire la porta. Siamo appena arrivati sulla piazzola.
Dove possiamo svuotare il bagno? A che ora chiude l'ufficio? I bambini vogliono fare la doccia ma l'acqua resta fredda.
La corrente non funziona più da stamattina. Possiamo portare il cane? Quale cavo va nella presa? Abbiamo bisogno di altro gas.
La pompa fa uno strano rumore. Grazie mille per il vostro aiuto. Posso parlare con qualcuno? Ho rotto la finestra per sbaglio.
La batteria è scarica. Quanto dura ancora il gas? C'è un posto per mangiare qui vicino? Il fornello non si accende. Che cosa devo fare adesso?
Il tetto perde quando piove. Mi può dire come si usa questo? Vorremmo restare ancora una notte. La chiave è rimasta bloccata.`,
  pl: `Jak włączyć ogrzewanie? Gdzie jest butla z gazem? Z kranu nie leci woda. Lodówka jest ciepła i nie chłodzi.
Kiedy musimy oddać przyczepę? Czy możecie nam pomóc? Zgasło światło i jest ciemno.
Jakie jest hasło do internetu? Czy sklep jest dzisiaj otwarty? Nie mogę otworzyć drzwi. Właśnie przyjechaliśmy na miejsce.
Gdzie można opróżnić toaletę? O której zamykają biuro? Dzieci chcą wziąć prysznic, ale woda jest zimna.
Prąd nie działa od rana. Czy możemy zabrać psa? Który kabel podłączyć do gniazdka? Potrzebujemy więcej gazu.
Pompa wydaje dziwny dźwięk. Dziękuję bardzo za pomoc. Czy mogę z kimś porozmawiać? Przez przypadek zepsułem okno.
Akumulator jest rozładowany. Na jak długo wystarczy gazu? Czy jest tu gdzieś coś do jedzenia? Kuchenka się nie zapala. Co mam teraz zrobić?
Dach przecieka, kiedy pada deszcz. Proszę mi powiedzieć, jak tego używać. Chcielibyśmy zostać jeszcze jedną noc. Klucz się zaciął w zamku.`,
  pt: `Como ligo o aquecimento? Onde está a botija de gás? Não sai água da torneira. O frigorífico está quente e não arrefece.
Quando temos de devolver a caravana? Podem ajudar-nos, por favor? A luz apagou-se e está escuro.
Qual é a senha da internet? A loja está aberta hoje? Não consigo abrir a porta. Acabámos de chegar ao parque.
Onde podemos despejar a sanita? A que horas fecha o escritório? As crianças querem tomar banho mas a água continua fria.
A eletricidade não funciona desde esta manhã. Podemos levar o cão? Que cabo vai na tomada? Precisamos de mais gás.
A bomba faz um barulho estranho. Muito obrigado pela vossa ajuda. Posso falar com alguém? Parti a janela sem querer.
A bateria está descarregada. Quanto tempo dura o gás? Há algum sítio para comer aqui perto? O fogão não acende. O que faço agora?
O teto pinga quando chove. Pode dizer-me como se usa isto? Gostaríamos de ficar mais uma noite. A chave ficou presa na fechadura.`,
  en: `How do I turn the heating on? Where is the gas bottle? There is no water from the tap. The fridge is warm and will not get cold.
When do we have to bring the caravan back? Could you help us please? The light went out and it's dark.
What's the password for the wifi? Is the shop open today? I can't open the door. We've just got to the pitch.
Where can we empty the toilet? What time does the office shut? The kids want a shower but the water stays cold.
The electric hasn't worked since this morning. Can the dog come? Which cable goes in the socket? We need more gas.
The pump makes a funny noise. Thanks very much for your help. Can I talk to someone? I broke the window by accident.
The battery is flat. How long will the gas last? Is there anywhere to eat near here? The cooker won't light. What should I do now?
The roof leaks when it rains. Could you tell me how this works? We would like to stay one more night. The key is stuck in the lock.`,
};
